export type { HandOver } from './hand-over/hand-over.js';
export { handOverOf, type PageWish } from './hand-over/hand-over-of.js';
export { livePage } from './serve/page-text.js';
export { type LiveServer, serveLive } from './serve/serve-live.js';
