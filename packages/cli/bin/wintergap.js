#!/usr/bin/env node
import v8 from 'node:v8';

// The hour loop is many small functions on numbers. Inlined into one another they run two to three times as fast, but
// the engine's usual budget for that ends halfway through the loop (see bench/).
v8.setFlagsFromString('--max-inlined-bytecode-size-cumulative=3000');

await import('../bundle/main.js');
