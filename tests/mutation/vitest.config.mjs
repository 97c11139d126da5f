// Tests of one room, named by the variable MUTATION_ROOM, for the run of changed sources (run.mjs).
import { BaseSequencer } from 'vitest/node';
import { everywhere, sources } from '../../vitest.config.ts';
import { rooms, slow } from './rooms.mjs';

const room = process.env.MUTATION_ROOM;
if (!(room in rooms)) throw new Error(`MUTATION_ROOM must name one of ${Object.keys(rooms).join(', ')}`);
const seconds = process.env.MUTATION_SLOW === '1' ? (slow[room] ?? []) : [];
const globs = [...rooms[room], ...seconds];
/** What a room leaves out, unless it is asked as slow. */
const leftOut = rooms[room].filter((glob) => glob.startsWith('!')).map((glob) => glob.slice(1));

/** Files that rooms.mjs names come first, in its order. */
const rank = ({ moduleId }) => {
  const named = globs.findIndex((glob) => moduleId.endsWith(`/${glob}`));
  return named < 0 ? globs.length : named;
};

class AsNamed extends BaseSequencer {
  async sort(files) {
    return [...files].sort((a, b) => rank(a) - rank(b));
  }
}

export default {
  resolve: { alias: sources },
  test: {
    ...everywhere,
    include: globs.filter((glob) => !glob.startsWith('!')),
    exclude: leftOut.filter((glob) => !seconds.includes(glob)),
    sequence: { sequencer: AsNamed },
    reporters: [],
  },
};
