/**
 * Limits of a thread that runs years. What it makes is either dropped at once or kept for long, so little room for young
 * things costs it no time. Where much is allowed, the engine lets what was dropped lie until there is much of it: a tenth of
 * its usual allowance is five times what a thread of years has in use, and each stays 20 to 30 MB smaller. Columns of hours
 * do not count in it.
 */
export const threadMemory = { maxYoungGenerationSizeMb: 12, maxOldGenerationSizeMb: 256 };
