/**
 * Limits of a thread that runs years. What it makes is either dropped at once or kept for long, so little room for young
 * things costs it no time, and each thread stays some 30 MB smaller.
 */
export const threadMemory = { maxYoungGenerationSizeMb: 12 };
