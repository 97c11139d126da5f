/** Colours of the report, by what they stand for. Every one has 4.5 : 1 against `paper`, so that it can also be text. */
export interface Palette {
  paper: string;
  ink: string;
  /** Captions, axis labels. */
  quiet: string;
  /** Grid lines and rules: decoration only, no contrast asked of it. */
  rule: string;
  /** Behind key figures and cautions. */
  panel: string;
  link: string;
  used: string;
  thrown: string;
  engine: string;
  charge: string;
  noon: string;
  air: string;
  bank: string;
  freezing: string;
  alarm: string;
  /** Cells of the throttle calendar from seldom to always, each with the text that stands on it. */
  steps: readonly (readonly [fill: string, text: string])[];
}

/** For a light screen, and for paper. */
export const lightPalette: Palette = {
  paper: '#fcfbf7',
  ink: '#1c2426',
  quiet: '#56605f',
  rule: '#dedbd0',
  panel: '#f2efe5',
  link: '#1a5f6b',
  used: '#2d6a4f',
  thrown: '#8c5a00',
  engine: '#9c2f2f',
  charge: '#1d5c83',
  noon: '#6b5a2e',
  air: '#4f6b78',
  bank: '#7a3d78',
  freezing: '#1858a8',
  alarm: '#9c2f2f',
  steps: [
    ['#f4e8c8', '#1c2426'],
    ['#e8cf8f', '#1c2426'],
    ['#d3a94f', '#1c2426'],
    ['#8c5a00', '#ffffff'],
    ['#5e3a00', '#ffffff'],
  ],
};

/** For a dark screen. */
export const darkPalette: Palette = {
  paper: '#13191b',
  ink: '#e9e8e1',
  quiet: '#a9b2b0',
  rule: '#323b3e',
  panel: '#1d2528',
  link: '#86cbd8',
  used: '#6cc59a',
  thrown: '#e2b45a',
  engine: '#f09384',
  charge: '#7fbce8',
  noon: '#d8c592',
  air: '#9fb9c4',
  bank: '#d59fd3',
  freezing: '#8ab8f5',
  alarm: '#f09384',
  steps: [
    ['#33301f', '#e9e8e1'],
    ['#4d4220', '#e9e8e1'],
    ['#6e5820', '#ffffff'],
    ['#c0923b', '#13191b'],
    ['#f0cd84', '#13191b'],
  ],
};

/** The palette as custom properties of a style sheet. */
export function paletteRules({ steps, ...colours }: Palette): string {
  return [
    ...Object.entries(colours).map(([name, colour]) => `--${name}:${colour}`),
    ...steps.map(([fill, text], i) => `--step${i + 1}:${fill};--step${i + 1}-text:${text}`),
  ].join(';');
}
