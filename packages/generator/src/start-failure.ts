/** An engine that does not always start. */
export interface StartFailure {
  /** Chance that one attempt fails, 0 to 1. */
  chance: number;
  /** Any whole number; the same seed gives the same sequence of failures. */
  seed: number;
  /** Time until somebody or something tries again, h. */
  retryAfterH: number;
}

/**
 * Whether start attempt number `attempt` fails. Depends on seed and number only, so a run can be repeated or taken up
 * in the middle. The bits are mixed as in MurmurHash3's finalizer (Appleby 2011), twice.
 */
export function startFails(failure: StartFailure, attempt: number): boolean {
  if (failure.chance <= 0) return false;
  return mixed(mixed(failure.seed | 0) ^ attempt) / 4294967296 < failure.chance;
}

function mixed(seed: number): number {
  let bits = (seed + 0x9e3779b9) | 0;
  bits = Math.imul(bits ^ (bits >>> 16), 0x85ebca6b);
  bits = Math.imul(bits ^ (bits >>> 13), 0xc2b2ae35);
  return (bits ^ (bits >>> 16)) >>> 0;
}
