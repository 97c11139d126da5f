import { basename } from 'node:path';
import type { SiteFile } from '@wintergap/site';

/**
 * What a page was written from and on which day: today, or that of SOURCE_DATE_EPOCH, the seconds that are set where the
 * same input is to give the same file on any day (reproducible-builds.org).
 */
export function writtenFrom({ file }: SiteFile): { from: string; on: string } {
  const epoch = process.env.SOURCE_DATE_EPOCH;
  const fixed = epoch !== undefined && /^\d+$/.test(epoch);
  const on = (fixed ? new Date(Number(epoch) * 1000) : new Date()).toLocaleDateString('en-GB', {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    ...(fixed && { timeZone: 'UTC' }),
  });
  return { from: basename(file), on };
}
