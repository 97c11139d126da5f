// What a page that draws by itself, in a browser, takes from the report: the same charts, colours and words.
export { valueAxis } from './chart/axes.js';
export { chargeFrame, type DailyCharge, dailyCharge, engineDaysFrame } from './chart/charge.js';
export { type Chart, narrowWidth, wideWidth } from './chart/chart.js';
export { energyChart } from './chart/energy.js';
export { monthBarsChart } from './chart/month-bars.js';
export { type MonthlyEnergy, monthlyEnergy } from './chart/monthly-energy.js';
export { plotted } from './chart/plotted.js';
export { type LossChain, lossChain } from './page/sections/losses.js';
export { darkPalette, lightPalette, paletteRules } from './page/sheet/palette.js';
export { patterns } from './page/sheet/patterns.js';
export { spellNotes, spellTable } from './text/worst.js';
export { headline } from './text/year.js';
export { hoursDifferenceInWords, yearsInWords } from './words/common-words.js';
export { figure, percent } from './words/figures.js';
export { inShownUnits, inVolumeUnit, temperatureText, volumeText, volumeUnit } from './words/shown-units.js';
export { throttlingWhen } from './words/throttling-when.js';
