// Runs every command line of docs/guide and holds what it prints against the text block that follows it.
// After a build:  node docs/guide-outputs.mjs          says what differs
//                 node docs/guide-outputs.mjs --write  puts in what is printed
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const guide = fileURLToPath(new URL('guide/', import.meta.url));
const program = fileURLToPath(new URL('../node_modules/.bin/wintergap', import.meta.url));

/** Names of the pages that have command lines. */
export const pages = readdirSync(guide).filter((name) => name.endsWith('.md'));

/** A page as it stands, and with what its commands print now. */
export function pageNow(page) {
  const stands = readFileSync(join(guide, page), 'utf8');
  const folder = mkdtempSync(join(tmpdir(), 'wintergap-guide-'));
  try {
    // A block of commands, and the block of text after it where there is one.
    const now = stands.replace(/```sh\n([\s\S]*?)```(?:(\n\n```text\n)[\s\S]*?```)?/g, (all, commands, opening) => {
      const printed = commands
        .trim()
        .split('\n')
        .map((line) => run(line, folder));
      if (opening === undefined) return all;
      return `\`\`\`sh\n${commands}\`\`\`${opening}${printed.at(-1).trimEnd()}\n\`\`\``;
    });
    return { stands, now };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function run(line, folder) {
  const [name, ...words] = line.split(' ');
  if (name !== 'wintergap') throw new Error(`the guide runs wintergap only, found: ${line}`);
  return execFileSync(program, words, { cwd: folder, encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const page of pages) {
    const { stands, now } = pageNow(page);
    if (stands === now) continue;
    console.log(`docs/guide/${page} does not show what its commands print`);
    if (process.argv.includes('--write')) writeFileSync(join(guide, page), now);
    else process.exitCode = 1;
  }
}
