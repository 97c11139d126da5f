// Draws docs/rooms.svg: every package as a box, arrows to what it imports (those that others imply are left out), read
// from the packages' own manifests. Run it after a change of directions: node docs/rooms.mjs
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = new URL('../', import.meta.url);
const boxWidth = 104;
const boxHeight = 34;
const gapAcross = 18;
const gapDown = 46;
const margin = 16;

/** Package names with the packages each imports. */
function readRooms() {
  const rooms = new Map();
  for (const name of readdirSync(new URL('packages/', root)).sort()) {
    const manifest = JSON.parse(readFileSync(new URL(`packages/${name}/package.json`, root), 'utf8'));
    const own = Object.keys(manifest.dependencies ?? {}).filter((dependency) => dependency.startsWith('@wintergap/'));
    rooms.set(
      name,
      own.map((dependency) => dependency.slice('@wintergap/'.length)),
    );
  }
  return rooms;
}

/** Row of each room: one below the lowest of those it imports. */
function rowsOf(rooms) {
  const rows = new Map();
  const rowOf = (name) => {
    if (!rows.has(name)) rows.set(name, Math.max(-1, ...rooms.get(name).map(rowOf)) + 1);
    return rows.get(name);
  };
  for (const name of rooms.keys()) rowOf(name);
  return rows;
}

/** Imports that no other import of the same room leads to already. */
function directImports(rooms, name) {
  const reaches = (from, to) => rooms.get(from).some((next) => next === to || reaches(next, to));
  const imports = rooms.get(name);
  return imports.filter((target) => !imports.some((other) => other !== target && reaches(other, target)));
}

/** The picture as SVG text; foundation below, program on top. */
export function roomsPicture() {
  const rooms = readRooms();
  const rows = rowsOf(rooms);
  const rowCount = Math.max(...rows.values()) + 1;
  const byRow = Array.from({ length: rowCount }, (_, row) =>
    [...rooms.keys()].filter((name) => rows.get(name) === row),
  );
  const widest = Math.max(...byRow.map((names) => names.length));
  const width = 2 * margin + widest * (boxWidth + gapAcross) - gapAcross;
  const height = 2 * margin + rowCount * (boxHeight + gapDown) - gapDown;
  const place = new Map();
  byRow.forEach((names, row) => {
    const rowWidth = names.length * (boxWidth + gapAcross) - gapAcross;
    names.forEach((name, i) => {
      const x = (width - rowWidth) / 2 + i * (boxWidth + gapAcross);
      place.set(name, { x, y: height - margin - boxHeight - row * (boxHeight + gapDown) });
    });
  });
  const arrows = [...rooms.keys()].flatMap((name) =>
    directImports(rooms, name).map((target) => {
      const from = place.get(name);
      const to = place.get(target);
      const [x1, y1, x2, y2] = [from.x + boxWidth / 2, from.y + boxHeight, to.x + boxWidth / 2, to.y];
      return `  <path d="M${x1} ${y1} C${x1} ${y1 + 24} ${x2} ${y2 - 24} ${x2} ${y2}" marker-end="url(#head)"/>`;
    }),
  );
  const boxes = [...place].map(
    ([name, { x, y }]) =>
      `  <rect x="${x}" y="${y}" width="${boxWidth}" height="${boxHeight}" rx="5"/>\n  <text x="${x + boxWidth / 2}" y="${y + 22}">${name}</text>`,
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img">
<title>The rooms and what each imports, foundation below</title>
<style>
  rect { fill: #fbf6e9; stroke: #6b5b2e } text { font: 15px sans-serif; text-anchor: middle; fill: #2b2616 }
  path { fill: none; stroke: #8a7f63 } #head path { fill: #8a7f63 }
</style>
<rect x="0" y="0" width="${width}" height="${height}" style="fill:#ffffff;stroke:none"/>
<defs><marker id="head" viewBox="0 0 8 8" refX="8" refY="4" markerWidth="8" markerHeight="8" orient="auto"><path d="M0 0 L8 4 L0 8 z"/></marker></defs>
<g>
${arrows.join('\n')}
${boxes.join('\n')}
</g>
</svg>
`;
}

if (process.argv[1] === fileURLToPath(import.meta.url))
  writeFileSync(new URL('rooms.svg', import.meta.url), roomsPicture());
