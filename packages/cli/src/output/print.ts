/**
 * What a terminal would take as an order (escape sequences, the bell, signs that turn the order of writing) and what
 * stands for it. The same escape is right within JSON.
 */
// biome-ignore lint/suspicious/noControlCharactersInRegex: it is them that are looked for
const orders = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;

/** A text in which file names, names and values of a file can do nothing to the terminal but be read. */
export const harmless = (text: string): string =>
  text.replace(orders, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`);

/** Every answer of the program goes through here to the standard output. */
export const print = (text: string): boolean => process.stdout.write(harmless(text));

/** Every message of the program goes through here to the standard error output. */
export const printError = (text: string): boolean => process.stderr.write(harmless(text));
