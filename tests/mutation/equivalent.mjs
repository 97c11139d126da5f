// Changes that no test can notice, with the reason; RESULTS.md counts them apart. A change is named by its file, the line it is
// in, and what stands there `from` and `to`; where these are left out, every change of the line is meant.

const beyondTheEnd = 'one step further writes beyond the end of a typed array, which holds nothing there';
const tie = 'the same value is put in place of itself';

const inFile = (file, ...changes) => changes.map((change) => ({ file: `packages/${file}.ts`, ...change }));

export const equivalent = [
  ...inFile(
    'tally/src/closing',
    {
      line: 'if (Math.abs(imbalance) > closing.worstHourWh) closing.worstHourWh = Math.abs(imbalance);',
      to: 'Math.abs(imbalance) >= closing.worstHourWh',
      because: tie,
    },
    {
      line: 'if (!(closing.worstRelative <= closingTolerance)) {',
      to: 'closing.worstRelative < closingTolerance',
      because: 'differs for an imbalance of exactly the tolerance, which no sum of energies hits',
    },
    {
      line: "const columnsOf = (side: 'in' | 'out' | 'lost') =>",
      because: 'the module does not load, so no test begins',
    },
  ),
  ...inFile(
    'tally/src/spells',
    {
      line: 'for (let i = 0; i < 2 * n && run < n; i++) {',
      to: 'i <= 2 * n',
      because: 'the third first hour of the year: a spell that reaches it was whole in the second round',
    },
    {
      line: 'for (let i = 0; i < 2 * n && run < n; i++) {',
      to: 'true',
      because: 'only ends the loop early; the result is held to a year in any case',
    },
    {
      line: 'for (let i = 0; i < 2 * n && run < n; i++) {',
      to: 'run <= n',
      because: 'only ends the loop early; the result is held to a year in any case',
    },
    { line: 'if (run > longest) longest = run;', to: 'run >= longest', because: tie },
    { line: 'if (gap > longest) longest = gap;', to: 'gap >= longest', because: tie },
  ),
  ...inFile(
    'tally/src/throttle',
    { line: 'for (let h = 0; h < hoursPerYear; h++) {', to: 'h <= hoursPerYear', because: beyondTheEnd },
    { line: 'for (let day = 0; day < daysPerYear; day++) {', to: 'day <= daysPerYear', because: beyondTheEnd },
    {
      line: 'const near = (day + away + daysPerYear) % daysPerYear;',
      to: 'day - away',
      because: 'the days around are the same ones, met the other way round',
    },
    {
      line: 'if (length > best.length) best = { start: (day - length + flags.length) % flags.length, length };',
      to: 'length >= best.length',
      because: 'of two gaps of the same length either is the longest',
    },
    {
      line: 'return best.length === 0 ? { start: 0, length: 0 } : best;',
      to: 'false',
      because: 'with every day in season the search began on day 0, which is then the start all the same',
    },
  ),
  ...inFile(
    'generator/src/compile-generator',
    {
      line: "const toBus = output.bus === 'dc' ? (output.efficiency ?? 1) : 1;",
      to: 'true',
      because: 'an AC output has no efficiency of its own: it is 1 either way',
    },
    {
      line: 'if (toBus < 1) for (let h = 0; h < hoursPerYear; h++) ratedW[h]! *= toBus;',
      from: 'toBus < 1',
      because: 'times 1 is the same',
    },
    {
      line: 'if (toBus < 1) for (let h = 0; h < hoursPerYear; h++) ratedW[h]! *= toBus;',
      to: 'h <= hoursPerYear',
      because: beyondTheEnd,
    },
    {
      line: 'for (let h = 0; h < hoursPerYear; h++) if (accepted[h] === 0) startAllowed[h] = 0;',
      to: 'h <= hoursPerYear',
      because: beyondTheEnd,
    },
    {
      line: 'for (let h = 0; h < hoursPerYear; h++) if (exerciseAt[h] === 1) startAllowed[h] = 1;',
      to: 'h <= hoursPerYear',
      because: beyondTheEnd,
    },
  ),
  ...inFile('generator/src/derating', {
    line: 'for (let h = 0; h < hoursPerYear; h++) ratedW[h] = powerW * deratedShare(derating, elevationM, airC[h]!);',
    to: 'h <= hoursPerYear',
    because: beyondTheEnd,
  }),
  ...inFile(
    'generator/src/exercise',
    {
      line: 'for (let day = everyDays - 1; day < daysPerYear; day += everyDays) {',
      to: 'day <= daysPerYear',
      because: 'a date beyond the year has no hours left',
    },
    {
      line: 'const last = Math.min(due + everyDays * 24, hoursPerYear);',
      because: 'the first accepted hour beyond an interval is that of the next one too, which marks it already',
    },
    {
      line: 'for (let h = due; h < last; h++) {',
      to: 'h <= last',
      because: 'the hour one further is the next date itself',
    },
  ),
  ...inFile('generator/src/hours-accepted', {
    line: 'const end = to > from ? to : to + 24;',
    to: 'to >= from',
    because: 'hours that begin and end alike are refused before',
  }),
  ...inFile('generator/src/look-ahead', {
    line: 'for (let h = 0; h < hoursPerYear; h++) {',
    to: 'h <= hoursPerYear',
    because: beyondTheEnd,
  }),
  ...inFile(
    'generator/src/start-failure',
    {
      line: 'if (failure.chance <= 0) return false;',
      because: 'no hash, from 0 up, is below a chance of 0',
    },
    {
      line: 'return mixed(mixed(failure.seed | 0) ^ attempt) / 4294967296 < failure.chance;',
      because: 'one attempt in four thousand million',
    },
    { line: 'let bits = (seed + 0x9e3779b9) | 0;', because: 'another row of chance, as good as this one' },
  ),
  ...inFile(
    'generator/src/start-threshold',
    {
      line: "return rule.kind === 'hand' || rule.kind === 'dull-tomorrow' ? rule.looksAt : undefined;",
      to: 'true',
      because: 'rules of other kinds have no looksAt',
    },
    {
      line: 'for (let h = 0; h < hoursPerYear; h++) if (!hours || hours.includes(h % 24)) mask[h] = 1;',
      to: 'h <= hoursPerYear',
      because: beyondTheEnd,
    },
    { line: 'for (let h = 0; h < hoursPerYear; h++) {', to: 'h <= hoursPerYear', because: beyondTheEnd },
    {
      line: "if (rule.kind === 'voltage') continue;",
      to: 'false',
      because: 'a voltage rule has no state of charge that could be higher than another',
    },
    {
      line: 'if (rule.below > threshold[h]!) threshold[h] = rule.below;',
      to: 'rule.below >= threshold[h]!',
      because: tie,
    },
  ),
  ...inFile('generator/src/underload', {
    line: 'if (ran > 0 && outputWh[h]! < generator.minimumLoadW * ran) hours += ran;',
    from: 'ran > 0',
    because: 'an hour without a run adds nothing',
  }),
];
