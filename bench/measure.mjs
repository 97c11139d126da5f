// Times of whole processes, beside a yardstick that runs in turn with them: what slows the machine slows both.
import { spawnSync } from 'node:child_process';

export const median = (values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];

/**
 * One run of a command to its end.
 *
 * @param command program and arguments
 * @param exits exit codes that are right
 * @returns wall and processor time of the process, ms, and its peak memory, MB
 * @throws Error with what it printed when it ends otherwise
 */
export function once(command, exits = [0]) {
  const start = performance.now();
  const { status, stderr } = spawnSync('/usr/bin/env', ['time', '-f', '%U %S %M', ...command], {
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  const wallMs = performance.now() - start;
  if (!exits.includes(status)) throw new Error(`${command.join(' ')}: exit code ${status}\n${stderr}`);
  const [userS = 0, systemS = 0, peakKB = 0] = stderr.trim().split('\n').at(-1).split(' ').map(Number);
  return { wallMs, cpuMs: 1000 * (userS + systemS), peakMB: peakKB / 1024 };
}

/**
 * Two commands in turn, A B A B, after one run of each that does not count.
 *
 * @returns medians of the first, of the second's time, and of the ratios first to second, pair by pair
 */
export function inPairs(command, yardstick, pairs, exits) {
  const runs = Array.from({ length: pairs + 1 }, () => ({ of: once(command, exits), beside: once(yardstick) })).slice(
    1,
  );
  const middle = (figure) => median(runs.map(figure));
  return {
    wallMs: middle(({ of }) => of.wallMs),
    yardstickMs: middle(({ beside }) => beside.wallMs),
    peakMB: middle(({ of }) => of.peakMB),
    wallRatio: middle(({ of, beside }) => of.wallMs / beside.wallMs),
    cpuRatio: middle(({ of, beside }) => of.cpuMs / beside.cpuMs),
  };
}
