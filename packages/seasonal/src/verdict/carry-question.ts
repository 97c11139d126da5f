import { SiteError, type SiteFile, type SiteProblem } from '@wintergap/site';
import { type Costs, readCosts } from '../cost/costs-section.js';
import { type CarrySettings, readCarry } from './carry-section.js';

/**
 * Reads `carry` and `costs` of a site file.
 *
 * @throws SiteError with the problems of both
 */
export function readCarryQuestion(file: SiteFile): { settings: CarrySettings; costs: Costs | null } {
  const problems: SiteProblem[] = [];
  const collect = <Section>(read: (file: SiteFile) => Section): Section | null => {
    try {
      return read(file);
    } catch (error) {
      if (!(error instanceof SiteError)) throw error;
      problems.push(...error.problems);
      return null;
    }
  };
  const settings = collect(readCarry);
  const costs = collect(readCosts);
  if (settings === null || problems.length > 0) throw new SiteError(file.file, problems);
  return { settings, costs };
}
