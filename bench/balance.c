/* The balance of the year in plain C: the yardstick of `npm run bench`, not part of the program.
 *
 * The same equations, tables and cuts as packages/year/src/loop for a lead-acid bank, arrays at their maximum power behind
 * controllers of one efficiency, and a DC engine started and stopped by charge; what such a place never uses is left out.
 * Reads the plant as doubles in the order of `bench/plant-doubles.mjs`, runs the year and prints its engine hours, the charge at
 * its end and the nanoseconds an hour of the loop takes. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#define HOURS 8760
#define TEMPERATURES 12
#define STATES 45
#define POWERS 25
#define COLUMNS 30

static struct {
  double cells, refAh, c10, floor, lowest, chargeLimitA, dischargeLimitA, powerPerWatt, perI10, perSpan, gassingSlope;
  double restFullV, restFallV, setCellV[3], compensation, gasPerAh, tailA, absorptionH;
  double toOutdoors, heatCapacity, sources, inverterLimitW;
  double hasEngine, chargerEfficiency, fuelIdle, fuelPerWh, stopAbove, minimumRunH, warmUpH, coolDownH;
} p;
static double maxCurrentA[8];
static double chargeV[TEMPERATURES * STATES * POWERS], dischargeV[TEMPERATURES * STATES * POWERS];
static double acceptance[3][TEMPERATURES * STATES], dischargeLimit[TEMPERATURES * STATES];
static double storedShare[2049], capacity[65], selfDischarge[111];
static double acW[HOURS], dcW[HOURS], inverterW[HOURS], converterW[HOURS], ownW[HOURS], aroundC[HOURS], offerW[8][HOURS];
static double ratedW[HOURS], startBelow[HOURS], startAllowed[HOURS], runAllowed[HOURS];
static double ledger[COLUMNS][HOURS];
enum { AVAILABLE, USED, THROTTLED, CLIPPED, SPARE, GENERATOR, TO_BUS, AC_SERVED, DC_SERVED, DARK, SHORTFALL, OWN_USE,
       INVERTER_LOSS, CONVERTER_LOSS, CHARGER_LOSS, BANK_LOSS, SELF, CHARGE, DISCHARGE, STORED, STATE, LOWEST, BANK_C,
       BANK_V, ENGINE_H, STARTS, FUEL, GASSING, DARK_H, SINCE_FULL };

/* What is known at one moment, and what the buses then do. */
static double bankC, soc, voltageV;
static struct { double sunW, clippedW, spareW, thrownW, engineToDcW, chargeW, dischargeW, amps, storedShare, rate,
  served, demandW, acByInverterW, wantW, limitW, emptyAt, acceptAmps, setV; int atLimit; } flow;
static int stage;
static enum { OFF, WARMING, LOADED, COOLING } phase;
static double heldH, sinceFull, ranH, inPhaseH;

static double least(double a, double b) { return a < b ? a : b; }
static double most(double a, double b) { return a > b ? a : b; }

static double interpolate(const double *table, int last, double x) {
  if (!(x > 0)) return table[0];
  if (x >= last) return table[last];
  int i = (int)x;
  return table[i] + (x - i) * (table[i + 1] - table[i]);
}

static double clamped(double x, double last) { return x > 0 ? (x > last ? last : x) : 0; }

static double byState(const double *table, double s, double tempC) {
  double t = clamped((tempC + 50) * 0.1, TEMPERATURES - 1 - 1e-9);
  s = clamped(s, STATES - 1 - 1e-9);
  int ti = (int)t, si = (int)s, k = ti * STATES + si;
  double a = table[k], b = table[k + STATES], low = a + (s - si) * (table[k + 1] - a);
  double high = b + (s - si) * (table[k + STATES + 1] - b);
  return low + (t - ti) * (high - low);
}

static double byPower(const double *table, double w, double s, double tempC) {
  double t = clamped((tempC + 50) * 0.1, TEMPERATURES - 1 - 1e-9);
  s = clamped(s, STATES - 1 - 1e-9);
  w = clamped(w, POWERS - 1 - 1e-9);
  int ti = (int)t, si = (int)s, wi = (int)w;
  double tf = t - ti, sf = s - si, wf = w - wi;
  const double *a = table + (ti * STATES + si) * POWERS + wi, *c = a + STATES * POWERS;
  double ap = a[0] + wf * (a[1] - a[0]), bp = a[POWERS] + wf * (a[POWERS + 1] - a[POWERS]);
  double cp = c[0] + wf * (c[1] - c[0]), dp = c[POWERS] + wf * (c[POWERS + 1] - c[POWERS]);
  double low = ap + sf * (bp - ap), high = cp + sf * (dp - cp);
  return low + tf * (high - low);
}

static double chargePosition(double s) {
  double share = (1 - s) * p.perSpan;
  return share > 0 ? (STATES - 1) * (1 - sqrt(share)) : STATES - 1;
}
static double dischargePosition(double s) { return (STATES - 1) * (1 - (1 - s) * p.perSpan); }
static double chargeVolts(double w, double s) {
  return p.cells * byPower(chargeV, sqrt(w * p.powerPerWatt), chargePosition(s), bankC);
}
static double dischargeVolts(double w, double s) {
  return p.cells * byPower(dischargeV, sqrt(w * p.powerPerWatt), dischargePosition(s), bankC);
}
static double storedWh(double s) { return p.cells * p.refAh * s * (p.restFullV - p.restFallV + 0.5 * p.restFallV * s); }
static double restVolts(double s) { return p.cells * (p.restFullV - p.restFallV * (1 - s)); }

static double voltsAt(double amps, double s, double (*volts)(double, double)) {
  double low = 0, high = amps * 4 * p.cells;
  for (int k = 0; k < 50; k++) {
    double w = (low + high) / 2;
    if (w < amps * volts(w, s)) low = w;
    else high = w;
  }
  return volts((low + high) / 2, s);
}

static void offer(int h) {
  flow.sunW = flow.clippedW = 0;
  for (int i = 0; i < p.sources; i++) {
    double limited = least(offerW[i][h], voltageV * maxCurrentA[i]);
    flow.sunW += limited;
    flow.clippedW += offerW[i][h] - limited;
  }
}

static void share(double s) {
  double beforeEngineW = flow.sunW - flow.demandW;
  int byCurrent = flow.acceptAmps >= p.chargeLimitA;
  double acceptW = byCurrent && beforeEngineW + flow.limitW > flow.acceptAmps * restVolts(s)
    ? flow.acceptAmps * voltsAt(flow.acceptAmps, s, chargeVolts) : flow.acceptAmps * flow.setV;
  flow.wantW = acceptW - beforeEngineW;
  flow.engineToDcW = least(most(flow.wantW, 0), flow.limitW);
  int isSatisfied = flow.wantW > 0 && flow.wantW <= flow.limitW;
  double netW = isSatisfied ? acceptW : beforeEngineW + flow.engineToDcW;
  flow.served = flow.storedShare = 1;
  flow.thrownW = flow.chargeW = flow.dischargeW = 0;
  flow.atLimit = 0;
  if (netW >= 0) {
    int limited = netW >= acceptW;
    flow.atLimit = limited && flow.acceptAmps > 0 && !byCurrent;
    flow.chargeW = flow.engineToDcW > 0 ? netW : least(netW, acceptW);
    flow.thrownW = netW - flow.chargeW;
    flow.amps = limited ? flow.acceptAmps : netW / chargeVolts(netW, s);
    if (flow.amps > 0) {
      voltageV = flow.chargeW / flow.amps;
      flow.storedShare = interpolate(storedShare, 2048, p.gassingSlope * (1 - s) / (flow.amps * p.perI10 + 0.55));
    } else voltageV = restVolts(s);
    flow.rate = flow.storedShare * flow.amps / p.refAh;
    flow.emptyAt = p.lowest;
    return;
  }
  double wantedW = -netW, givenW = wantedW;
  double mostAmps = least(p.c10 * byState(dischargeLimit, dischargePosition(s), bankC), p.dischargeLimitA);
  double amps = wantedW / dischargeVolts(wantedW, s);
  if (amps > mostAmps) {
    amps = mostAmps;
    givenW = least(amps * voltsAt(amps, s, dischargeVolts), wantedW);
  }
  double warm = most(0.1, 1 + 0.005 * (bankC - 25));
  flow.emptyAt = most(p.floor, 1 - interpolate(capacity, 64, 16 * sqrt(amps * p.perI10)) * warm);
  if (s <= flow.emptyAt + 1e-9) givenW = amps = 0;
  flow.served = givenW < wantedW ? (flow.sunW + flow.engineToDcW + givenW) / flow.demandW : 1;
  flow.dischargeW = givenW;
  flow.amps = -amps;
  voltageV = amps > 0 ? givenW / amps : restVolts(s);
  flow.rate = -amps / p.refAh;
}

static void solve(int h, double s, int engine) {
  flow.acByInverterW = least(acW[h], p.inverterLimitW);
  flow.limitW = engine ? ratedW[h] : 0;
  flow.demandW = inverterW[h] + converterW[h] + ownW[h];
  flow.acceptAmps = s >= 1 || bankC >= 50 ? 0 : least(p.c10 * byState(acceptance[stage], chargePosition(s), bankC), p.chargeLimitA);
  flow.setV = p.cells * (p.setCellV[stage] + p.compensation * (least(most(bankC, -20), 50) - 25));
  offer(h);
  share(s);
  double above = flow.clippedW;
  flow.clippedW = least(above, most(flow.wantW, 0));
  flow.spareW = above - flow.clippedW;
}

static double cut(int h, double hours) {
  double longest = hours;
  if (flow.rate > 0)
    hours = least(hours, least((1 - soc) / flow.rate, most(least(0.02, 0.08 * (1 - soc)), 1e-5) / flow.rate));
  else if (flow.rate < 0) hours = least(hours, least((soc - flow.emptyAt) / -flow.rate, 0.02 / -flow.rate));
  if (flow.atLimit && stage == 0) hours = least(hours, most(p.absorptionH - heldH, 0));
  if (phase == WARMING) hours = least(hours, p.warmUpH - inPhaseH);
  else if (phase == COOLING) hours = least(hours, p.coolDownH - inPhaseH);
  else if (p.hasEngine && phase == OFF) {
    if (startAllowed[h] && flow.rate < 0 && soc > startBelow[h]) hours = least(hours, (startBelow[h] - soc) / flow.rate);
  } else if (p.hasEngine) {
    double toStop = soc >= p.stopAbove ? 0 : flow.rate > 0 ? (p.stopAbove - soc) / flow.rate : INFINITY;
    double ahead = most(toStop, p.minimumRunH - ranH);
    if (ahead > 1e-9) hours = least(hours, ahead);
  }
  return least(most(hours, 3e-6), longest);
}

static int carries(int h) {
  if (phase == OFF) return flow.served > 1 - 1e-9;
  if (phase != LOADED) return 1;
  double v = voltageV;
  solve(h, soc, 0);
  voltageV = v;
  return flow.served > 1 - 1e-9;
}

static void decide(int h, int bankServes) {
  if (phase == WARMING && inPhaseH + 1e-9 >= p.warmUpH) phase = LOADED, inPhaseH = 0;
  else if (phase == COOLING && inPhaseH + 1e-9 >= p.coolDownH) phase = OFF, inPhaseH = 0;
  else if (phase == OFF) {
    if (!startAllowed[h] || (bankServes && soc > startBelow[h] + 1e-9)) return;
    phase = p.warmUpH > 0 ? WARMING : LOADED;
    ranH = inPhaseH = 0;
    ledger[STARTS][h]++;
    stage = 0;
    heldH = 0;
  } else if (phase == LOADED) {
    int over = !runAllowed[h] ? 1 : !bankServes ? 0 : ranH + 1e-9 < p.minimumRunH ? 0
      : (stage == 1 && soc > startBelow[h] + 1e-9) || soc + 1e-9 >= p.stopAbove;
    if (over) phase = p.coolDownH > 0 ? COOLING : OFF, inPhaseH = 0;
  }
}

static void post(int h, double hours, double gainWh) {
  double served = flow.served * hours, load = (acW[h] + dcW[h]) * hours;
  double ac = flow.acByInverterW * served, dc = dcW[h] * served, inW = flow.engineToDcW / p.chargerEfficiency;
  ledger[AVAILABLE][h] += flow.sunW * hours;
  ledger[USED][h] += (flow.sunW - flow.thrownW) * hours;
  ledger[THROTTLED][h] += flow.thrownW * hours;
  ledger[CLIPPED][h] += flow.clippedW * hours;
  ledger[SPARE][h] += flow.spareW * hours;
  ledger[AC_SERVED][h] += ac;
  ledger[DC_SERVED][h] += dc;
  ledger[OWN_USE][h] += ownW[h] * served;
  ledger[INVERTER_LOSS][h] += (inverterW[h] - flow.acByInverterW) * served;
  ledger[CONVERTER_LOSS][h] += (converterW[h] - dcW[h]) * served;
  ledger[BANK_V][h] += voltageV * hours;
  double dark = load - ac - dc;
  int isDark = dark > 1e-9 * load;
  if (isDark) ledger[DARK][h] += dark, ledger[DARK_H][h] += hours;
  if (phase != OFF) {
    ledger[ENGINE_H][h] += hours;
    ledger[FUEL][h] += (p.fuelIdle + p.fuelPerWh * inW) * hours;
  }
  if (phase == LOADED) {
    ledger[GENERATOR][h] += inW * hours;
    ledger[TO_BUS][h] += flow.engineToDcW * hours;
    ledger[CHARGER_LOSS][h] += (inW - flow.engineToDcW) * hours;
    ledger[SHORTFALL][h] += (1 - (flow.demandW > 0 ? least(flow.sunW / flow.demandW, 1) : 1)) * load;
  } else if (isDark) ledger[SHORTFALL][h] += dark;
  if (flow.amps >= 0) {
    ledger[CHARGE][h] += flow.chargeW * hours;
    ledger[BANK_LOSS][h] += flow.chargeW * hours - gainWh;
    ledger[GASSING][h] += (1 - flow.storedShare) * flow.amps * hours;
  } else {
    ledger[DISCHARGE][h] += flow.dischargeW * hours;
    ledger[BANK_LOSS][h] += -gainWh - flow.dischargeW * hours;
  }
}

static double piece(int h, double leftH, int mayCut) {
  int wasOff = phase == OFF;
  if (wasOff) solve(h, soc, 0);
  if (p.hasEngine) decide(h, carries(h));
  if (!wasOff || phase != OFF) solve(h, soc, phase == LOADED);
  double hours = mayCut ? cut(h, leftH) : leftH;
  if (flow.rate > 0) {
    solve(h, least(most(soc + flow.rate * hours / 2, p.lowest), 1), phase == LOADED);
    if (mayCut) hours = cut(h, hours);
  }
  if (leftH - hours < 3e-6) hours = leftH;
  double next = least(most(soc + flow.rate * hours, p.lowest), 1);
  post(h, hours, storedWh(next) - storedWh(soc));
  if (next < ledger[LOWEST][h]) ledger[LOWEST][h] = next;
  if (flow.atLimit && flow.amps >= 0 && stage == 0) {
    heldH += hours;
    if (heldH + 1e-9 >= p.absorptionH || flow.amps <= p.tailA) sinceFull = heldH = 0, stage = 1;
  }
  inPhaseH += hours;
  if (phase != OFF) ranH += hours;
  soc = next;
  return hours;
}

static void year(void) {
  memset(ledger, 0, sizeof ledger);
  for (int h = 0; h < HOURS; h++) {
    if (h % 24 == 0) stage = 0, heldH = 0, sinceFull++;
    ledger[LOWEST][h] = soc;
    double leftH = 1;
    for (int n = 1; leftH > 0; n++) leftH -= piece(h, leftH, n < 400);
    double before = storedWh(soc), self = interpolate(selfDischarge, 110, least(bankC, 50) + 50);
    soc -= self * most(soc, 0);
    double after = storedWh(soc);
    ledger[SELF][h] = before - after;
    ledger[STORED][h] = after;
    ledger[STATE][h] = soc;
    if (soc < ledger[LOWEST][h]) ledger[LOWEST][h] = soc;
    double heatW = ledger[BANK_LOSS][h] - p.gasPerAh * ledger[GASSING][h] + before - after + p.toOutdoors * aroundC[h];
    bankC = heatW / p.toOutdoors + (bankC - heatW / p.toOutdoors) * exp(-p.toOutdoors / p.heatCapacity);
    ledger[BANK_C][h] = bankC;
    ledger[SINCE_FULL][h] = sinceFull;
  }
}

static void take(FILE *file, void *into, size_t bytes) {
  if (fread(into, 1, bytes, file) != bytes) exit(1);
}

int main(int argc, char **argv) {
  FILE *file = fopen(argv[1], "rb");
  int runs = atoi(argv[2]);
  if (argc != 3 || !file) return 1;
  take(file, &p, sizeof p);
  take(file, maxCurrentA, sizeof maxCurrentA);
  take(file, chargeV, sizeof chargeV);
  take(file, dischargeV, sizeof dischargeV);
  take(file, acceptance, sizeof acceptance);
  take(file, dischargeLimit, sizeof dischargeLimit);
  take(file, storedShare, sizeof storedShare);
  take(file, capacity, sizeof capacity);
  take(file, selfDischarge, sizeof selfDischarge);
  double *columns[] = { acW, dcW, inverterW, converterW, ownW, aroundC, ratedW, startBelow, startAllowed, runAllowed };
  for (int c = 0; c < 10; c++) take(file, columns[c], sizeof acW);
  for (int i = 0; i < p.sources; i++) take(file, offerW[i], sizeof acW);
  double fastest = INFINITY, first = 0, firstSoc = 0;
  for (int run = 0; run < runs; run++) {
    struct timespec from, to;
    soc = 0.8, bankC = aroundC[0], voltageV = restVolts(0.8);
    stage = 0, phase = OFF, heldH = sinceFull = ranH = inPhaseH = 0;
    clock_gettime(CLOCK_MONOTONIC, &from);
    year();
    clock_gettime(CLOCK_MONOTONIC, &to);
    fastest = least(fastest, ((to.tv_sec - from.tv_sec) * 1e9 + (to.tv_nsec - from.tv_nsec)) / HOURS);
    first = 0, firstSoc = soc;
    for (int h = 0; h < HOURS; h++) first += ledger[ENGINE_H][h];
  }
  printf("%.9f %.12f %.3f\n", first, firstSoc, fastest);
  return 0;
}
