import { readInputText } from '@wintergap/ground';
import { parseDocument } from 'yaml';

/** Names that a site file gives its variants and arrays. */
export interface NamesInFile {
  variants: string[];
  arrays: string[];
}

/**
 * The names in a site file that is perhaps being written just now: what can be read of them, nothing else is looked at.
 *
 * @returns no names when the file is not there or no YAML
 */
export function namesInFile(file: string): NamesInFile {
  try {
    const content: unknown = parseDocument(readInputText(file, 'refused'), { logLevel: 'silent' }).toJS();
    const { variants, arrays } = (content ?? {}) as { variants?: unknown; arrays?: unknown };
    const items: unknown[] = Array.isArray(arrays) ? arrays : [];
    return {
      variants: typeof variants === 'object' && variants !== null ? Object.keys(variants) : [],
      arrays: items.map((item) => (item as { name?: unknown } | null)?.name).filter((name) => typeof name === 'string'),
    };
  } catch {
    return { variants: [], arrays: [] };
  }
}
