/** What the program's exit code says. */
export const exitCodes = {
  done: 0,
  /** The answer is no: a check failed, or a target cannot be met. */
  no: 1,
  wrongInput: 2,
  /** A fault of the program. */
  fault: 3,
} as const;
