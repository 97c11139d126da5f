import { acceptingWeather, parseSite, readSiteText, type SiteFile } from '@wintergap/site';
import type { AcceptWeather } from '../options/accept-weather.js';

/**
 * The site file, whose weather may be rejected where the user insists.
 *
 * @param text of the file, where it is read already
 */
export function loadAccepting(file: string, options: AcceptWeather, text: string = readSiteText(file)): SiteFile {
  const site = parseSite(text, file);
  return options.acceptWeather ? acceptingWeather(site) : site;
}
