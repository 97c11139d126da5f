import { carrySection, costsSection } from '@wintergap/seasonal';
import { siteJsonSchema } from '@wintergap/site';
import { sizeSection, sweepSection } from '@wintergap/study';

/**
 * The JSON Schema of a whole site file, for editors, as text: what `start` writes beside a site file. The bundle holds it
 * as text, for making it takes the schemas of all rooms.
 */
export function editorSchema(): string {
  const sections = { sweep: sweepSection, size: sizeSection, carry: carrySection, costs: costsSection };
  return `${JSON.stringify(siteJsonSchema(sections))}\n`;
}
