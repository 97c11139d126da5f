const months = 'January|February|March|April|May|June|July|August|September|October|November|December';
const units = 'kWh|kW|h|L|gal|degC|degF|K|%|days?|starts?|hours?';
const figureAndUnit = new RegExp(`(\\d) (?=(?:${units}|${months}|\\d{3})(?![A-Za-z\\d]))`, 'g');

/** Sentences that were broken for a terminal, in one piece, with no line break between a figure and its unit. */
export const prose = (text: string): string => text.replace(/\s*\n\s*/g, ' ').replace(figureAndUnit, '$1\u00a0');
