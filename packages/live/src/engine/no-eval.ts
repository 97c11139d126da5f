import * as z from 'zod';

// The page's policy lets nobody make code out of text, and the schemas need not. They ask when they are made: this file is
// to be loaded before them.
export const withoutEval: boolean = z.config({ jitless: true }).jitless === true;
