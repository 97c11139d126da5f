// Which tests are held against each room's changes: its own, and those of the whole that try it against printed values or
// a reckoning by hand. Left out is what starts programs or browsers, and what runs for more than some seconds.
const published = (...names) => names.map((name) => `tests/published/${name}.test.ts`);
const whole = (...names) => names.map((name) => `tests/${name}.test.ts`);
const inLoop = (name) => `packages/year/src/loop/${name}.test.ts`;
const inStudy = (name) => `packages/study/src/${name}.test.ts`;
const inFacts = (name) => `packages/year/src/facts/${name}.test.ts`;
const own = (room) => `packages/${room}/src/**/*.test.ts`;

/** Tests of the study room that run whole years, or one sweep's file many times over. */
const wholeYears = [
  'common/common-years',
  'common/file-year',
  'common/run-designs',
  'common/years-of-sites',
  'compare/compared-costs',
  'outlook/many-years',
  'rerun',
  'size/create-trial',
  'sweep/continued',
  'sweep/design',
  'tilt/tilt-trials',
  'worst/leave-off',
];

/** Those that take no time: most changes end the run there. */
const inNoTime = [
  ...['paired-difference', 'merit', 'quantile-error', 'student', 'until-clear', 'common-answer', 'years-left'].map(
    (name) => `common/${name}`,
  ),
  ...['axis', 'grid', 'order', 'ranges'].map((name) => `design/${name}`),
  ...['array', 'bank', 'temperature', 'from-year'].map((name) => `hand/${name}`),
  ...['quantile-range', 'rank', 'share-range', 'outlook'].map((name) => `outlook/${name}`),
  ...['targets', 'judged', 'nearest', 'trial', 'search'].map((name) => `size/${name}`),
  ...['front', 'best', 'header', 'format', 'fingerprint', 'run', 'file'].map((name) => `sweep/${name}`),
  'outcome',
  'compare/design-costs',
  'tilt/engine-tilts',
  ...['ties', 'lean-months', 'effects', 'effect-weights', 'load-weights', 'charger-sizes'].map(
    (name) => `weigh/${name}`,
  ),
];

/** Room -> globs of tests. */
export const rooms = {
  tally: [own('tally')],
  battery: [own('battery'), ...published('battery', 'hydrogen', 'wear')],
  generator: [own('generator'), ...published('fuel')],
  mounts: [own('mounts'), ...published('snow', 'plane')],
  seasonal: [own('seasonal'), ...published('sequent-peak', 'life-cycle-cost')],
  array: [own('array'), ...published('conductors', 'module')],
  // Quick ones first: most changes end the run there.
  year: [
    ...['charging', 'engine', 'post-piece', 'bus-flow', 'few-hours', 'settle', 'cabinet-heat'].map(inLoop),
    ...['start-reason', 'refused-charge', 'array-losses', 'dark-season', 'bank-facts', 'bank-air'].map(inFacts),
    ...['cautions', 'year-summary', 'worst-spell'].map(inFacts),
    'packages/year/src/prepare/!(prepare-power|prepared-cache|site-weather).test.ts',
    'packages/year/src/prepare/{prepared-cache,site-weather}.test.ts',
    inLoop('current-limit'),
  ],
  // None starts a thread: the sources have none to start. Those of whole years are asked with `--slow`.
  study: [
    ...inNoTime.map(inStudy),
    own('study'),
    ...wholeYears.map((name) => `!${inStudy(name)}`),
    ...published('hand-method'),
  ],
};

/** Tests of whole years, seconds each: only with `--slow`, for the changes that the quick ones leave. */
export const slow = {
  year: [
    ...['cold-bank', 'running-rules', 'engine-moments', 'balance'].map(inLoop),
    'packages/year/src/prepare/prepare-power.test.ts',
    'packages/year/src/simulate.test.ts',
    ...whole('bank-loss', 'bank-place', 'direct-current-limit', 'stop-first', 'dark-season', 'worst'),
  ],
  study: wholeYears.map(inStudy),
};
