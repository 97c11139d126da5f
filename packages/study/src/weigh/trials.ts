import type { Site } from '@wintergap/site';

/** A changed design to be run, under a name by which its years are asked for. */
export interface Trial {
  id: string;
  site: Site;
}
