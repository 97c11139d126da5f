import { acceptingWeather, loadSite, type SiteFile } from '@wintergap/site';
import type { AcceptWeather } from './accept-weather.js';

/** The site file, whose weather may be rejected where the user insists. */
export function loadAccepting(file: string, options: AcceptWeather): SiteFile {
  const site = loadSite(file);
  return options.acceptWeather ? acceptingWeather(site) : site;
}
