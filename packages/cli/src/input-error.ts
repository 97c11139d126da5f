/** Wrong use of the program that is not in the site or weather file: an option, a path. */
export class InputError extends Error {
  override readonly name = 'InputError';
}
