import { readSiteText } from '@wintergap/site';

/** The text of a site file, read before what understands it is loaded. */
export const siteText = (file: string): string => readSiteText(file);
