/** A table of measured loads that cannot be used; the message names the table and the line that says why. */
export class LoadTableError extends Error {
  override readonly name = 'LoadTableError';
}
