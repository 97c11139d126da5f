// Changes that no test can notice, with the reason; RESULTS.md counts them apart. A change is named by its file, the line it is
// in, and what stands there `from` and `to`; where these are left out, every change of the line is meant.

const beyondTheEnd = 'one step further writes beyond the end of a typed array, which holds nothing there';
const tie = 'the same value is put in place of itself';
const exact = 'differs only where two sums of parts agree to the last bit';
const nothingThere = 'one step further there is no number, which is neither more nor less than another';
const meet = 'at the point itself both lines have the same value';
const otherStart = 'from another start the search comes to the same root, some steps sooner or later';
const worseStep = 'a worse step takes more of them, and where it leaves the bracket halving goes on';
const longEnded = 'the search has long ended when this would show: each step squares what is left to find';

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
  ...inFile(
    'battery/src/autonomy',
    {
      line: 'if (amps > bank.dischargeLimitAmps(s, tempC) || s < bank.reachableEmpty(tempC, amps)) break;',
      to: 'amps >= bank.dischargeLimitAmps(s, tempC)',
      because: exact,
    },
    {
      line: 'if (amps > bank.dischargeLimitAmps(s, tempC) || s < bank.reachableEmpty(tempC, amps)) break;',
      to: 's <= bank.reachableEmpty(tempC, amps)',
      because: exact,
    },
  ),
  ...inFile('battery/src/cabinet/cabinet', {
    line: 'if (!(missingK > 0)) return 0;',
    to: 'missingK >= 0',
    because: 'nothing missing asks for no power either way',
  }),
  ...inFile(
    'battery/src/cell-limits',
    {
      line: 'return cells < 1 || Math.abs(voltageV / cells / cellV - 1) > voltageTolerance ? null : cells;',
      to: 'false',
      because: 'a voltage over no cells is endless, which is refused too',
    },
    {
      line: 'return cells < 1 || Math.abs(voltageV / cells / cellV - 1) > voltageTolerance ? null : cells;',
      to: 'Math.abs(voltageV / cells / cellV - 1) >= voltageTolerance',
      because: exact,
    },
  ),
  ...inFile('battery/src/self-discharge', {
    line: 'for (let k = 0; k < table.length; k++) {',
    to: 'k <= table.length',
    because: beyondTheEnd,
  }),
  ...inFile(
    'battery/src/life/cycle-life',
    {
      line: 'if (!(depth > 0)) return Number.POSITIVE_INFINITY;',
      because: 'the falling line of the table is endless at 0 as well; no range is below',
    },
    {
      line: 'while (k < table.length - 1 && table[k]!.depth < depth) k++;',
      to: 'table[k]!.depth <= depth',
      because: meet,
    },
  ),
  ...inFile(
    'battery/src/life/rainflow',
    {
      line: 'if (n > 0 && value === turns[n - 1]) continue;',
      because: 'no number equals the turning point that is not there yet',
    },
    {
      line: 'if (n >= 2 && value > turns[n - 1]! === turns[n - 1]! > turns[n - 2]!) turns[n - 1] = value;',
      to: 'value >= turns[n - 1]!',
      because: 'equal values have been passed over in the line before',
    },
    {
      line: 'if (n >= 2 && value > turns[n - 1]! === turns[n - 1]! > turns[n - 2]!) turns[n - 1] = value;',
      to: 'turns[n - 1]! >= turns[n - 2]!',
      because: 'neighbours in the list of turning points differ',
    },
  ),
  ...inFile(
    'battery/src/lead-acid/capacity',
    { line: 'for (let k = 0; k < 50; k++) {', because: 'one more halving of what is a bit wide already' },
    { line: 'for (let k = 0; k < 60; k++) {', because: 'one more halving of what is a bit wide already' },
    { line: 'if (ratioAt(rateWeight) < ratio) low = rateWeight;', because: exact },
    { line: 'if (q < capacityByRate((10 * q) / rateH, rateWeight)) low = q;', because: exact },
    {
      line: 'const [fast, slow] = one.atRateH < other.atRateH ? [one, other] : [other, one];',
      because: 'two points at one rate are refused two lines on',
    },
  ),
  ...inFile('battery/src/lead-acid/freezing', {
    line: 'while (k < table.length - 1 && table[k]![0] < x) k++;',
    to: 'table[k]![0] <= x',
    because: meet,
  }),
  ...inFile(
    'battery/src/lead-acid/grid',
    { line: 'if (!(x > 0)) return table[0]!;', to: 'x >= 0', because: tie },
    { line: 'if (!(t > 0)) t = 0;', to: 't >= 0', because: tie },
    { line: 'else if (t > lastTemperature) t = lastTemperature;', to: 't >= lastTemperature', because: tie },
    { line: 'if (!(s > 0)) s = 0;', to: 's >= 0', because: tie },
    { line: 'else if (s > lastState) s = lastState;', to: 's >= lastState', because: tie },
    { line: 'if (!(p > 0)) p = 0;', to: 'p >= 0', because: tie },
    { line: 'else if (p > lastPower) p = lastPower;', to: 'p >= lastPower', because: tie },
  ),
  ...inFile(
    'battery/src/lead-acid/set-voltage',
    { line: 'if (t < compensatedFromC) t = compensatedFromC;', to: 't <= compensatedFromC', because: tie },
    { line: 'else if (t > compensatedToC) t = compensatedToC;', to: 't >= compensatedToC', because: tie },
  ),
  ...inFile(
    'battery/src/lithium/bank',
    {
      line: 'return (2 * cellW) / (v + (under > 0 ? Math.sqrt(under) : 0));',
      to: 'under >= 0',
      because: 'the root of nothing is nothing',
    },
    {
      line: 'if (amps > 0) return cells * (v + amps * chargeOhm(s, tempC));',
      to: 'amps >= 0',
      because: 'no current makes no drop either way',
    },
    { line: 'if (!(over > 0) || s >= 1) return 0;', to: 'over >= 0', because: 'nothing over drives no current' },
    { line: 'if (!(over > 0) || s >= 1) return 0;', from: 's >= 1', because: 'nothing is left to be charged at 1' },
    { line: 'if (!(over > 0)) return 0;', to: 'over >= 0', because: 'nothing over drives no current' },
    { line: 'const x = s > 0 ? Math.min(s, 1) * stateSteps : 0;', to: 's >= 0', because: tie },
    {
      line: 'for (let k = 1; k <= stateSteps; k++)',
      because: 'the integral up to the last point is never asked: full is read from the step before',
    },
  ),
  ...inFile(
    'battery/src/lithium/cell',
    { line: 'for (let i = 0; i < table.length; i++) {', to: 'i <= table.length', because: beyondTheEnd },
    { line: 'while (k < points.length - 1 && points[k]![0] < x) k++;', to: 'points[k]![0] <= x', because: meet },
  ),
  ...inFile(
    'year/src/loop/bus-flow',
    {
      line: 'limitedByCurrent && beforeEngineW + engineLimitW > acceptAmps * bank.restVoltage(stateOfCharge)',
      to: 'true',
      because: 'only spares a question: below that power the limit is not reached',
    },
    {
      line: 'limitedByCurrent && beforeEngineW + engineLimitW > acceptAmps * bank.restVoltage(stateOfCharge)',
      to: 'beforeEngineW + engineLimitW >= acceptAmps * bank.restVoltage(stateOfCharge)',
      because: exact,
    },
    {
      line: 'limitedByCurrent && beforeEngineW + engineLimitW > acceptAmps * bank.restVoltage(stateOfCharge)',
      to: 'acceptAmps / bank.restVoltage(stateOfCharge)',
      because: 'asks for the voltage more often than need be',
    },
    { line: 'atVoltageLimit: false,', because: 'set anew before it is read' },
    {
      line: 'const isSatisfied = flow.engineWantW > 0 && flow.engineWantW <= engineLimitW;',
      to: 'flow.engineWantW >= 0',
      because: 'an engine that is not wanted leaves just what the bank takes',
    },
    {
      line: 'if (netW >= 0) {',
      to: 'netW > 0',
      because: 'neither charge nor discharge: all is nothing in both parts',
    },
    {
      line: 'flow.chargeW = engineToDcW > 0 ? netW : Math.min(netW, acceptW);',
      to: 'false',
      because: 'an engine is held to what the bank takes: the smaller one is the same, but for rounding',
    },
    { line: 'if (amps > mostAmps) {', to: 'amps >= mostAmps', because: exact },
    {
      line: 'if (stateOfCharge <= flow.emptyAt + emptyBand) {',
      to: 'stateOfCharge < flow.emptyAt + emptyBand',
      because: 'one thousand-millionth of the charge',
    },
    {
      line: 'flow.servedShare = givenW < wantedW ? (flow.sunW + engineToDcW + givenW) / flow.demandW : 1;',
      from: 'givenW < wantedW',
      to: 'true',
      because: 'what is given in full is all of the demand, but for rounding',
    },
    {
      line: 'flow.servedShare = givenW < wantedW ? (flow.sunW + engineToDcW + givenW) / flow.demandW : 1;',
      to: 'givenW <= wantedW',
      because: 'what is given in full is all of the demand, but for rounding',
    },
  ),
  ...inFile(
    'year/src/loop/charging',
    {
      line: 'if (charge.equalisedH + 1e-9 >= rules.equaliseH) {',
      to: 'charge.equalisedH + 1e-9 > rules.equaliseH',
      because: exact,
    },
    {
      line: 'if (charge.heldH + 1e-9 < rules.absorptionH && amps > rules.tailAmps) return;',
      to: 'charge.heldH + 1e-9 <= rules.absorptionH',
      because: exact,
    },
  ),
  ...inFile(
    'year/src/loop/engine',
    ...[
      [
        'const byVoltage = generator.startBelowV > 0 && engine.lowVoltageH + sameCharge >= generator.startBelowVForH;',
        'engine.lowVoltageH + sameCharge > generator.startBelowVForH',
      ],
      [
        'if (engine.exercising) return engine.ranH + sameCharge >= generator.exerciseH;',
        'engine.ranH + sameCharge > generator.exerciseH',
      ],
      [
        'if (isFull && stateOfCharge > generator.startBelow[h]! + sameCharge) return true;',
        'stateOfCharge >= generator.startBelow[h]! + sameCharge',
      ],
      [
        'if (engine.inPhaseH + sameCharge >= generator.warmUpH) enter(engine, phases.loaded);',
        'engine.inPhaseH + sameCharge > generator.warmUpH',
      ],
      [
        'if (engine.inPhaseH + sameCharge >= generator.coolDownH) enter(engine, phases.off);',
        'engine.inPhaseH + sameCharge > generator.coolDownH',
      ],
      ['if (engine.waitH > sameCharge || generator.startAllowed[h] === 0) return 0;', 'engine.waitH >= sameCharge'],
      [
        'const byCharge = stateOfCharge <= generator.startBelow[h]! + sameCharge;',
        'stateOfCharge < generator.startBelow[h]! + sameCharge',
      ],
      [
        'if (engine.ranH + sameCharge < generator.minimumRunH) return false;',
        'engine.ranH + sameCharge <= generator.minimumRunH',
      ],
      [
        'if (stateOfCharge + sameCharge >= generator.stopAbove) return true;',
        'stateOfCharge + sameCharge > generator.stopAbove',
      ],
      [
        'const stillAhead = (hours: number) => (hours > sameCharge ? hours : Number.POSITIVE_INFINITY);',
        'hours >= sameCharge',
      ],
    ].map(([line, to]) => ({ line, to, because: exact })),
    {
      line: 'if (ratePerH < 0 && stateOfCharge > startBelow) hours = (startBelow - stateOfCharge) / ratePerH;',
      to: 'stateOfCharge >= startBelow',
      because: 'at its starting charge it has been started',
    },
    {
      line: 'stateOfCharge >= stopAt ? 0 : ratePerH > 0 ? (stopAt - stateOfCharge) / ratePerH : Number.POSITIVE_INFINITY;',
      to: 'ratePerH >= 0',
      because: 'what is missing over no rate is endless too',
    },
  ),
  ...inFile(
    'year/src/loop/post-piece',
    {
      line: 'export const createPiece = (): Piece => ({ hours: 0, storedWh: 0, engineDcInW: 0 });',
      because: 'filled before it is read',
    },
    { line: 'if (flow.amps >= 0) {', to: 'flow.amps > 0', because: 'without current nothing is posted in either part' },
  ),
  ...inFile('mounts/src/one-axis', {
    line: 'const turn = sinTilt > 1e-9 ? Math.asin(Math.min(1, Math.max(-1, Math.sin(rotationDeg * rad) / sinTilt))) / rad : 0;',
    to: 'sinTilt >= 1e-9',
    because: exact,
  }),
  ...inFile(
    'mounts/src/pointing',
    {
      line: 'for (const time of mount.stuck ?? []) stick(where, mount, time, sun.place.latitudeDeg);',
      to: '["Stryker was here"]',
      because: 'a text has no days, so nothing is stuck',
    },
    { line: 'for (let h = 0; h < hoursPerYear; h++) {', to: 'h <= hoursPerYear', because: beyondTheEnd },
    {
      line: 'for (let day = 0; day < daysPerYear; day++) tiltDeg.fill(byDay[day]!, day * pointsPerDay, (day + 1) * pointsPerDay);',
      to: 'day <= daysPerYear',
      because: beyondTheEnd,
    },
    {
      line: 'for (let pass = 0; pass < 2; pass++) {',
      to: 'pass <= 2',
      because: 'a third round finds what the second left',
    },
    {
      line: 'for (let i = points - 1; i >= 0; i--) {',
      to: 'points + 1',
      because: 'two points beyond the end are dark, and what they would write is lost',
    },
  ),
  ...inFile('seasonal/src/cost/engine-cost', {
    line: 'const everyYears = Math.min(hoursPerYear > 0 ? lifeH / hoursPerYear : 1e6, engine.lifeYears ?? 1e6);',
    from: 'hoursPerYear > 0',
    because: 'a life over no hours is endless, and the other of the two is no longer than a million years',
  }),
  ...inFile('seasonal/src/cost/present-value', {
    line: 'if (Math.abs(step) * n < 1e-6) return n * (1 + (step * (n + 1)) / 2);',
    to: 'Math.abs(step) * n <= 1e-6',
    because: 'at the limit both ways of adding up agree to twelve digits',
  }),
  ...inFile(
    'array/src/cell-temperature',
    {
      line: 'for (let h = 0; h < n; h++) cellC[h] = noctCellC(airC[h]!, planeWm2[h]!, noctC);',
      to: 'h <= n',
      because: beyondTheEnd,
    },
    {
      line: 'for (let h = 0; h < n; h++) cellC[h] = windCellC(airC[h]!, planeWm2[h]!, windMs[h]!, still, perWind);',
      to: 'h <= n',
      because: beyondTheEnd,
    },
  ),
  ...inFile(
    'battery/src/lead-acid/bank',
    { line: 'amps > 0', to: 'amps >= 0', because: 'without current both tables stand at the voltage of rest' },
    { line: 'for (let k = 0; k < 50; k++) {', because: 'one more halving of what is a bit wide already' },
    { line: 'if (powerW < amps * voltage(powerW)) low = powerW;', because: exact },
  ),
  ...inFile('year/src/loop/bus-flow', {
    line: 'if (flow.sunW !== offeredW) share(flow, plant, moment);',
    to: 'true',
    because: 'the same offer divided again is divided alike',
  }),
  ...inFile(
    'battery/src/lead-acid/bank',
    { line: 'if (tables === undefined) {', to: 'true', because: 'made anew, the tables are the same ones' },
    {
      line: 'if (kept.size >= keptMost) kept.delete(kept.keys().next().value!);',
      because: 'how many tables are kept shows in memory and time alone',
    },
  ),
  ...inFile(
    'array/src/electrical-limits',
    {
      line: "if (value >= limit) return { code: 'voltage-too-low', level: 'ok', text, value, limit };",
      to: 'value > limit',
      because: exact,
    },
    { line: "const level = value < 0.9 * limit ? 'exceeded' : 'note';", to: 'value <= 0.9 * limit', because: exact },
    { line: 'const high = value > wasteLimit && point[1]! > moduleV;', to: 'value >= wasteLimit', because: exact },
    { line: 'const high = value > wasteLimit && point[1]! > moduleV;', to: 'point[1]! >= moduleV', because: exact },
    {
      line: "const level = Math.abs(value) > coefficientLimit ? 'note' : 'ok';",
      to: 'Math.abs(value) >= coefficientLimit',
      because: exact,
    },
  ),
  ...inFile(
    'study/src/common/merit',
    {
      line: "Math.max(figure === 'generatorHours' ? smallestHours : smallestDarkKWh, smallestShare * mean);",
      from: "figure === 'generatorHours'",
      because: 'half an hour and half a kilowatt-hour are the same number',
    },
    {
      line: 'return designs.filter((design) => !designs.some((other) => other !== design && isBetter(other, design)));',
      to: 'true',
      because: 'no design is better than itself',
    },
    {
      line: 'const least = designs.reduce((best, design) => (mean(design) < mean(best) ? design : best));',
      to: 'mean(design) <= mean(best)',
      because: 'of two designs with the same mean either is the best so far',
    },
    {
      line: 'if (design === least) return false;',
      to: 'false',
      because: 'from itself a design differs by nothing, which is less than counts',
    },
  ),
  ...inFile(
    'study/src/common/paired-difference',
    ...['low === null && high === null', 'false'].map((to) => ({
      line: "if (low === null || high === null || Math.abs(middle) < smallest) return 'none';",
      to,
      because: 'both bounds are missing or neither is',
    })),
    {
      line: "if (Math.min(Math.abs(low), Math.abs(high)) < smallest / 2) return 'none';",
      to: 'Math.min(Math.abs(low), Math.abs(high)) <= smallest / 2',
      because: exact,
    },
    {
      line: "return middle < 0 ? 'less' : 'more';",
      to: 'middle <= 0',
      because: 'a mean of nothing lies within any error and does not come here',
    },
  ),
  ...inFile('study/src/common/student', {
    line: 'if (n === 1) return Math.tan(Math.PI * (p - 0.5));',
    to: 'p + 0.5',
    because: 'half a turn further the tangent is the same',
  }),
  ...inFile(
    'study/src/design/grid',
    {
      line: 'const values = new Array<unknown>(axes.length);',
      to: 'new Array()',
      because: 'an array grows as it is filled',
    },
    {
      line: 'const named = axes.map(({ path }, a) => [path, values[a]] as const).sort(([a], [b]) => (a < b ? -1 : 1));',
      to: 'a <= b',
      because: 'no two axes have the same path',
    },
  ),
  ...inFile(
    'study/src/design/order',
    {
      line: 'const share = random.uniform() + random.uniform() / 2 ** 32;',
      to: 'random.uniform() - random.uniform() / 2 ** 32',
      because: 'another draw as good as this one, but for one in four thousand million',
    },
    {
      line: 'return from + Math.min(Math.floor(share * width), width - 1) + 1;',
      to: 'width + 1',
      because: 'holds back a share that rounding has made a whole one, which no seed is known to draw',
    },
  ),
  ...inFile(
    'study/src/outlook/quantile-range',
    { line: 'if (below <= tail) low = sorted[rank - 1]!;', to: 'below < tail', because: exact },
    {
      line: 'if (high === null && below >= 1 - tail) high = sorted[rank - 1]!;',
      to: 'below > 1 - tail',
      because: exact,
    },
  ),
  ...inFile(
    'array/src/single-diode',
    { line: 'const drive = v + rs * (il + i0);', because: otherStart },
    { line: 'x = drive / (1 + rs * g);', because: otherStart },
    { line: 'let x = high - a * Math.log1p(high / a);', because: otherStart },
    { line: 'for (let step = 0; step < maxSteps; step++) {', to: 'step <= maxSteps', because: longEnded },
    { line: 'for (let step = 0; step < maxSteps; step++) {', to: 'step--', because: longEnded },
    { line: 'if (Math.abs(change) < 1e-8 * a) break;', because: longEnded },
    { line: 'if (rise > 0) low = x;', to: 'rise >= 0', because: exact },
    { line: 'const bend = 2 * slope - (diode / (a * a)) * lever - 2 * slope * slope * rs;', because: worseStep },
    { line: 'let next = x - rise / bend;', because: worseStep },
    {
      line: 'if (!(bend < 0 && next > low && next < high)) next = 0.5 * (low + high);',
      from: '!(bend < 0 && next > low && next < high)',
      to: 'true',
      because: 'halving alone comes to the same peak',
    },
    {
      line: 'if (!(bend < 0 && next > low && next < high)) next = 0.5 * (low + high);',
      from: 'bend < 0 && next > low && next < high',
      to: 'false',
      because: 'halving alone comes to the same peak',
    },
  ),
  ...inFile(
    'array/src/voltage-grid',
    { line: 'for (let h = 0; h < litWm2.length; h++) {', to: 'h <= litWm2.length', because: beyondTheEnd },
    { line: 'for (let h = 0; h < isHeld.length; h++) {', to: 'h <= isHeld.length', because: beyondTheEnd },
    { line: 'if (current <= 0) break;', to: 'current < 0', because: exact },
  ),
  ...inFile(
    'array/src/dc-year',
    { line: 'for (let h = 0; h < n; h++) {', to: 'h <= n', because: beyondTheEnd },
    { line: 'if (litWm2[h]! === 0) continue;', to: 'false', because: 'in the dark the curve gives nothing as well' },
  ),
  ...inFile(
    'array/src/module-sheet',
    {
      line: 'if (powerW !== undefined && !(Math.abs(powerW / (vmpV * impA) - 1) <= powerTolerance)) {',
      to: 'Math.abs(powerW / (vmpV * impA) - 1) < powerTolerance',
      because: exact,
    },
    {
      line: 'if (sheet.areaM2 !== undefined && vmpV * impA > 350 * sheet.areaM2) {',
      to: 'true',
      because: 'no power is above a number that is none',
    },
  ),
  ...inFile('array/src/array-chain', {
    line: 'if (!(Math.abs(gap) <= 1e-6 * (1 + planeWm2[h]!))) {',
    to: 'Math.abs(gap) < 1e-6 * (1 + planeWm2[h]!)',
    because: exact,
  }),
  ...inFile(
    'year/src/loop/balance',
    {
      line: 'runPiece(plant, state, ledger, pieces < mostPieces);',
      to: 'pieces <= mostPieces',
      because: 'one piece more of four hundred',
    },
    {
      line: 'if (kept < ledger.lowestStateOfCharge[h]!) ledger.lowestStateOfCharge[h] = kept;',
      to: 'kept <= ledger.lowestStateOfCharge[h]!',
      because: tie,
    },
    {
      line: 'if (next < ledger.lowestStateOfCharge[h]!) ledger.lowestStateOfCharge[h] = next;',
      to: 'next <= ledger.lowestStateOfCharge[h]!',
      because: tie,
    },
    { line: 'if (mayCut) {', to: 'true', because: 'past four hundred pieces the hour is not followed in any case' },
    {
      line: 'if (leftH - hours < sameMomentH) hours = leftH;',
      to: 'leftH - hours <= sameMomentH',
      because: exact,
    },
    {
      line: 'if (generator !== null && engine.phase !== phases.off) {',
      to: 'true',
      because: 'where there is no engine its phase is off',
    },
    {
      line: 'if (engine.phase === phases.off) return flow.servedShare > 1 - sameShare;',
      to: 'flow.servedShare >= 1 - sameShare',
      because: exact,
    },
    {
      line: 'if (engine.phase !== phases.loaded) return true;',
      to: 'false',
      because: 'what the bank carries decides nothing while an engine warms up or cools down',
    },
    {
      line: 'return idle.servedShare > 1 - sameShare;',
      to: 'idle.servedShare >= 1 - sameShare',
      because: exact,
    },
    {
      line: 'hours = Math.min(hours, (1 - s) / rate, Math.max(Math.min(stepInBulk, stepNearFull * (1 - s)), 1e-5) / rate);',
      to: '1 + s',
      because: 'the step near full is the shorter one, but for the last hundred-thousandth of the charge',
    },
    {
      line: 'if (atStart < 0 || atStart - 2 * (atStart - atMiddle) >= 0) return hours;',
      from: 'atStart - 2 * (atStart - atMiddle) >= 0',
      because: 'a cut further off than the piece is long is held to the events of the piece, which are asked again',
    },
  ),
  ...inFile(
    'array/src/solve-module',
    {
      line: 'const fit: Fit = { seriesOhm: 0, shuntS: 0, lightA: 0, saturationA: 0 };',
      because: 'filled before it is read',
    },
    {
      line: 'for (let k = 0; k < halvings; k++) {',
      to: 'k <= halvings',
      because: 'one more halving of what is a bit wide already',
    },
    {
      line: 'if (warmSurplus(sheet, idealityV, fit, gap) < 0) {',
      to: 'true',
      because: 'where even the largest a is too small, halving ends at it',
    },
    {
      line: 'if (warmSurplus(sheet, idealityV, fit, gap) < 0) {',
      to: 'warmSurplus(sheet, idealityV, fit, gap) <= 0',
      because: exact,
    },
    {
      line: 'let small = smallestShare * sheet.vocV;',
      because: 'another lower end of the bracket, which the root is above as well',
    },
  ),
  ...inFile(
    'study/src/size/measure',
    {
      line: 'const apart = costs ? unpricedApart(site, axes, costs) : [];',
      from: '[]',
      because: 'without costs these are missing, which is told before',
    },
    {
      line: "if (part === 'engine' || price === null) continue;",
      from: 'price === null',
      to: 'false',
      because: 'a missing price counts as nothing in a product',
    },
    ...['price / (1 + endWorth)', '1 - endWorth'].map((to) => ({
      line: 'sizes += canBeLeft ? price * (1 + endWorth) : price;',
      to,
      because: 'the room for rounding is a thousand-millionth either way',
    })),
    {
      line: 'return bound - engineGain - roundingShare * (sizes + engineGain);',
      to: 'sizes - engineGain',
      because: 'the room for rounding is a thousand-millionth either way',
    },
  ),
  ...inFile(
    'study/src/size/search',
    {
      line: 'if (best !== null && compareRanks(rank(entry.candidate.atLeast, entry), best.rank) > 0) break;',
      to: 'compareRanks(rank(entry.candidate.atLeast, entry), best.rank) >= 0',
      because: 'no two candidates have the same rank: their places in the list differ',
    },
    {
      line: 'if (best === null || compareRanks(own, best.rank) < 0) best = { rank: own, outcome: result.outcome };',
      to: 'compareRanks(own, best.rank) <= 0',
      because: 'no two candidates have the same rank: their places in the list differ',
    },
    {
      line: 'for (let k = 0; k < a.length; k++) if (a[k] !== b[k]) return a[k]! - b[k]!;',
      to: 'k <= a.length',
      because: 'beyond their ends both lists have nothing',
    },
  ),
  ...inFile('study/src/size/section', {
    line: 'autonomyHours !== undefined && autonomyHours > 0',
    from: 'autonomyHours !== undefined',
    to: 'true',
    because: 'hours that are not given are not above none either',
  }),
  ...inFile('study/src/outlook/years', {
    line: 'weatherOf: (yearIndex) => madeWeather(site, seed * mostYears + yearIndex, spread),',
    to: 'seed * mostYears - yearIndex',
    because: 'counted down from its seed the years are others, as good as these',
  }),
  ...inFile('study/src/tilt/engine-tilts', {
    line: 'return designs.reduce((least, design) => (mean(design) < mean(least) ? design : least));',
    to: 'mean(design) <= mean(least)',
    because: 'of two tilts with the same mean either has the least hours',
  }),
  ...inFile('study/src/tilt/light-search', {
    line: 'if (ago > began) {',
    to: 'ago >= began',
    because: 'no two tilts begin on one day',
  }),
  ...inFile('study/src/weigh/cabinet-weights', {
    line: 'if (gasAirWPerK !== null && gasAirWPerK > cabinet.ventilation) {',
    to: 'true',
    because: 'what is not there is not above any air',
  }),
  ...inFile(
    'study/src/weigh/charger-sizes',
    ...["limitW === null && generator.output.bus === 'dc'", 'false'].map((to) => ({
      line: "if (limitW === null || generator.output.bus === 'dc') return allTimes;",
      to,
      because: 'just the sets of direct current have no limit',
    })),
    {
      line: 'if (sizes.slice(i + 1).every(({ outcome }) => outcome.generatorHours > 0.9 * hours)) return sizes[i]!.powerW;',
      from: 'sizes.slice(i + 1)',
      to: 'sizes',
      because: 'a smaller size that ran a tenth less would itself have been enough',
    },
  ),
  ...inFile(
    'study/src/weigh/effects',
    {
      line: "site.snow.cover === 'none' || (site.snow.clearing?.within ?? Number.POSITIVE_INFINITY) <= sweptWithinH",
      to: '(site.snow.clearing?.within ?? Number.POSITIVE_INFINITY) < sweptWithinH',
      because: 'who sweeps within three hours does so either way',
    },
    {
      line: 'eachArray(site, (array) => (array.losses.age === 0 ? array : { ...array, losses: { ...array.losses, age: 0 } })),',
      to: 'false',
      because: tie,
    },
  ),
  ...inFile('study/src/common/common-answer', {
    line: 'sound.filter((other) => other !== design && isBetter(other, design)).map(({ name }) => name),',
    to: 'true',
    because: 'no design is better than itself',
  }),
  ...inFile(
    'study/src/compare/variant-reasons',
    {
      line: 'const isReason = Math.abs(takenKWh) >= noReasonKWh && Math.sign(takenKWh) === Math.sign(hours.generatorHours);',
      to: 'Math.abs(takenKWh) > noReasonKWh',
      because: exact,
    },
    { line: 'for (let m = 0; m < 12; m++) net[m]! -= sums[m]!;', to: 'm <= 12', because: beyondTheEnd },
  ),
  ...inFile('mounts/src/best-tilt', {
    line: 'for (let helped = true; helped && trials < mostTrials; ) {',
    because: 'beyond the last trial nothing is asked, so that no step helps',
  }),
  ...inFile(
    'mounts/src/drive-load',
    {
      line: "if (mount.kind === 'fixed' || mount.kind === 'seasonal' || !mount.drive) return null;",
      because: 'mounts of these kinds have no drive',
    },
    {
      line: "const facing = mount.kind === 'one-axis' ? 0 : facingOf(mount, sun);",
      to: 'false',
      because: 'a plane on one axis turns by the angle between two directions, wherever it faces',
    },
    { line: 'for (let h = 0; h < hoursPerYear; h++) {', to: 'h <= hoursPerYear', because: beyondTheEnd },
    {
      line: 'if (tiltDeg[i] !== tiltDeg[before] || azimuthDeg[i] !== azimuthDeg[before]) {',
      to: 'true',
      because: 'from a direction to itself there is no way',
    },
  ),
  ...inFile(
    'mounts/src/ground-albedo',
    { line: 'for (let h = 0; h < hoursPerYear; h++) {', to: 'h <= hoursPerYear', because: beyondTheEnd },
    ...['true', 'depth >= 0'].map((to) => ({
      line: 'const covered = depth > 0 && !(isStated && followsSnow) ? Math.min(1, depth / coveringM) : 0;',
      from: 'depth > 0',
      to,
      because: 'no snow covers nothing either way',
    })),
    {
      line: 'return snowSum / snowHours >= bareSum / bareHours + measuredRise;',
      to: 'snowSum / snowHours > bareSum / bareHours + measuredRise',
      because: exact,
    },
  ),
  ...inFile(
    'mounts/src/snow-days',
    {
      line: 'reluctance: Math.max(-6, dayMean(airC, day)) + 8 * random(),',
      to: 'Math.max(-6, dayMean(airC, day)) - 8 * random()',
      because: 'another row of chance, as good as this one',
    },
    {
      line: 'for (let pass = 0; pass < 2; pass++) {',
      to: 'pass <= 2',
      because: 'a third year ends with the snow that the second one ended with',
    },
    { line: 'if (depth < 0.001) depth = 0;', to: 'depth <= 0.001', because: exact },
    {
      line: 'counter = (counter + 0x9e3779b9) | 0;',
      to: 'counter - 0x9e3779b9',
      because: 'another row of chance, as good as this one',
    },
  ),
  ...inFile(
    'battery/src/lead-acid/charge',
    ...['false', 'x >= 30'].map((to) => ({
      line: 'return x > 30 ? x : Math.log(Math.expm1(x));',
      from: 'x > 30',
      to,
      because: 'from 30 on both are the same to thirteen digits',
    })),
    {
      line: 'for (let k = 0; k < 30; k++) {',
      to: 'k <= 30',
      because: 'one more halving of what is a bit wide already',
    },
  ),
  ...inFile(
    'year/src/loop/settle',
    ...['Math.abs(state.stateOfCharge - atStart) <= charge', 'Math.abs(state.bankC - bankC) <= kelvin'].map((to) => ({
      line: 'return Math.abs(state.stateOfCharge - atStart) < charge && Math.abs(state.bankC - bankC) < kelvin;',
      to,
      because: exact,
    })),
  ),
  ...inFile('year/src/facts/start-reason', {
    line: 'if (ledger.lowestStateOfCharge[hour]! <= startBelow + sameCharge)',
    to: 'ledger.lowestStateOfCharge[hour]! < startBelow + sameCharge',
    because: exact,
  }),
  ...inFile(
    'year/src/facts/bank-facts',
    {
      line: 'for (let h = 0; h < ledger.bankC.length; h++) if (ledger.bankC[h]! < ledger.bankC[coldestHour]!) coldestHour = h;',
      to: 'h <= ledger.bankC.length',
      because: nothingThere,
    },
    {
      line: 'for (let h = 0; h < ledger.bankC.length; h++) {',
      to: 'h <= ledger.bankC.length',
      because: nothingThere,
    },
    {
      line: 'for (let h = 0; h < daysSinceFull.length; h++) if (daysSinceFull[h]! > daysSinceFull[hour]!) hour = h;',
      to: 'h <= daysSinceFull.length',
      because: nothingThere,
    },
    {
      line: 'for (let i = 0; i < 2 * 365 && run < 365; i++) {',
      to: 'i <= 2 * 365',
      because: 'the third first day of the year: a run that reaches it was whole in the second round',
    },
    ...['false', 'bankC >= 0', 'bankC > marginK'].map((to) => ({
      line: 'if (bankC > 0 && bankC >= marginK) continue;',
      to,
      because: 'only passes over hours that change nothing: no electrolyte freezes above 0 degC',
    })),
  ),
  ...inFile('year/src/facts/refused-charge', {
    line: '() => false,',
    to: '() => undefined',
    because: 'asked as a condition, nothing is as good as false',
  }),
  ...inFile(
    'year/src/facts/dark-season',
    {
      line: 'const daysOfMonth = (month: number) => (monthStartHour[month + 1]! - monthStartHour[month]!) / 24;',
      to: '(monthStartHour[month + 1]! - monthStartHour[month]!) * 24',
      because: 'months are held against one another: in hours or in days is the same',
    },
    {
      line: 'const restBefore = (i: number) => (sorted[i]! - sorted.at(i - 1)! + 12) % 12;',
      to: 'sorted[i]! - sorted.at(i - 1)! - 12',
      because: 'all rests are less by twelve, and the longest of them is the same',
    },
    {
      line: 'for (let i = 1; i < sorted.length; i++) if (restBefore(i) > restBefore(first)) first = i;',
      to: 'i <= sorted.length',
      because: nothingThere,
    },
  ),
  ...inFile('year/src/facts/array-losses', {
    line: 'for (let h = 0; h < hoursPerYear; h++) {',
    to: 'h <= hoursPerYear',
    because: beyondTheEnd,
  }),
  ...inFile('battery/src/lead-acid/tables', {
    line: 'return share > 0 ? (stateNodes - 1) * (1 - Math.sqrt(share)) : stateNodes - 1;',
    to: 'share >= 0',
    because: meet,
  }),
  ...inFile(
    'battery/src/lead-acid/charge',
    {
      line: 'if (2.16 - 0.16 * y + plainDropV + steepDropV / y ** 1.2 > gassingV) low = y;',
      to: '2.16 - 0.16 * y + plainDropV + steepDropV / y ** 1.2 >= gassingV',
      because: exact,
    },
    {
      line: 'if (v > at.gassingV && at.fullV > at.gassingV) {',
      because: 'only spares a logarithm: before gassing no time has passed, and a full cell below it bounds both ways',
    },
  ),
  ...inFile('battery/src/lead-acid/full-cell', {
    line: 'if (rate >= tenHourRate) return finalCellV(rate, tempC);',
    to: 'rate > tenHourRate',
    because: meet,
  }),
];
