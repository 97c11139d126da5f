/** A place in the site file and what is wrong there. */
export interface SiteProblem {
  /** The table of parts in which it stands, as the site file names it; absent for the site file itself. */
  file?: string;
  /** 1-based line and column in the file; 0 when the problem has no place of its own. */
  line: number;
  column: number;
  /** The keys that lead there, such as `arrays[0].module.vmp`. */
  path: string;
  /** What was found, what is expected and how to fix it. */
  message: string;
}

/** Problems that are told at once: nobody mends more before trying again. */
const mostTold = 100;

/** Everything that is wrong with a site file, reported together. */
export class SiteError extends Error {
  override readonly name = 'SiteError';

  /** The site file, as the user named it. */
  readonly file: string;
  readonly problems: readonly SiteProblem[];

  constructor(file: string, problems: readonly SiteProblem[]) {
    const told = problems.slice(0, mostTold).map((problem) => describe(file, problem));
    if (problems.length > mostTold) told.push(`${file}: ${problems.length - mostTold} more problems`);
    super(told.join('\n'));
    this.file = file;
    this.problems = problems;
  }
}

function describe(siteFile: string, { file = siteFile, line, column, path, message }: SiteProblem): string {
  const place = line > 0 ? `${file}:${line}:${column}` : file;
  return path === '' ? `${place}: ${message}` : `${place}: ${path}: ${message}`;
}

/** `arrays[0].module.vmp` from the paths of the outer and of the inner value; either may be empty. */
export const joinedPath = (outer: string, inner: string): string =>
  outer === '' || inner === '' || inner.startsWith('[') ? outer + inner : `${outer}.${inner}`;

/** `arrays[0].module.vmp` from the keys that lead to a value. */
export function pathText(keys: readonly PropertyKey[]): string {
  return keys.reduce<string>((text, key) => {
    if (typeof key === 'number') return `${text}[${key}]`;
    return text === '' ? String(key) : `${text}.${String(key)}`;
  }, '');
}
