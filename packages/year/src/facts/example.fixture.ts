import { loadSite } from '@wintergap/site';
import type { BareYear } from '../year-result.js';
import { quietYear } from './year.fixture.js';

/** The site of an example, for what reads of its bank, its engine or its arrays. */
export const exampleSite = loadSite(new URL('../../../../examples/kettle-pond.yaml', import.meta.url).pathname).base;

/** A quiet year of that site. */
export const exampleYear = (...parts: Parameters<typeof quietYear>): BareYear => ({
  ...quietYear(...parts),
  site: exampleSite,
});
