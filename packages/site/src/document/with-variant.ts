import { isMap, isScalar, parseDocument, stringify } from 'yaml';

/**
 * The text of a site file with one more variant, everything else as it stands there, comments included.
 *
 * @param name of the new variant; one of that name, if there is any, makes way for it
 * @param change keys and values as they would be written under the name
 */
export function withVariant(text: string, name: string, change: unknown): string {
  const document = parseDocument(text);
  const variants = document.get('variants');
  const isThere = isMap(variants) && variants.has(name);
  if (!document.has('variants')) {
    const end = text === '' || text.endsWith('\n') ? text : `${text}\n`;
    return `${end}\n${entry('variants', { [name]: change }, 0)}`;
  }
  if (isMap(variants) && !variants.flow && !isThere && variants.range && variants.items.length > 0) {
    const [first] = variants.items;
    const keyAt = isScalar(first!.key) ? first!.key.range?.[0] : undefined;
    if (keyAt !== undefined) {
      const column = keyAt - (text.lastIndexOf('\n', keyAt - 1) + 1);
      const before = text.slice(0, keyAt);
      return `${before}${entry(name, change, column).trimStart()}${' '.repeat(column)}${text.slice(keyAt)}`;
    }
  }
  if (isMap(variants)) variants.set(name, document.createNode(change));
  else document.set('variants', document.createNode({ [name]: change }));
  return document.toString({ lineWidth: 0 });
}

function entry(key: string, value: unknown, indent: number): string {
  const lines = stringify({ [key]: value }, { lineWidth: 0 })
    .trimEnd()
    .split('\n');
  return `${lines.map((line) => ' '.repeat(indent) + line).join('\n')}\n`;
}
