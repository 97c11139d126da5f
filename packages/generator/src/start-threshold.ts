import { hoursPerYear, mustLie, OutOfRangeError } from '@wintergap/ground';
import { lookAheadMask } from './look-ahead.js';

/** What starts the engine. States of charge are 0 to 1. */
export type StartRule =
  /** A controller starts it when the state of charge is below. */
  | { kind: 'charge'; below: number }
  /** A controller starts it when the bank has stayed below a voltage for so many minutes. */
  | { kind: 'voltage'; belowV: number; forMin: number }
  /** A person looks in these hours of day and starts it when the state of charge is below. */
  | { kind: 'hand'; below: number; looksAt: readonly number[] }
  /** Started today, at a higher state of charge, because tomorrow looks dull; by a person if `looksAt` is given. */
  | {
      kind: 'dull-tomorrow';
      below: number;
      dullBelowWhM2: number;
      honesty: 'perfect' | 'persistence';
      looksAt?: readonly number[];
    };

/** Throws unless the rules make sense. */
export function checkStartRules(rules: readonly StartRule[]): void {
  let voltageRules = 0;
  for (const rule of rules) {
    if (rule.kind === 'voltage') {
      mustLie('start belowV', rule.belowV, 1, 2000);
      mustLie('start forMin', rule.forMin, 0, 10_080);
      voltageRules++;
    } else {
      mustLie('start below', rule.below, 0, 1);
      for (const hour of looksAt(rule) ?? []) {
        if (!Number.isInteger(hour) || hour < 0 || hour > 23) {
          throw new OutOfRangeError(`looksAt must be hours of day 0 to 23, got ${hour}`);
        }
      }
    }
  }
  if (voltageRules > 1) throw new OutOfRangeError('start must have one voltage rule at most');
}

/** The hours of day in which the rule can start the engine; `undefined` for all. */
function looksAt(rule: StartRule): readonly number[] | undefined {
  return rule.kind === 'hand' || rule.kind === 'dull-tomorrow' ? rule.looksAt : undefined;
}

/** 1 for each hour in which any of the rules could start the engine, 0 where nobody and nothing looks. */
export function watchedMask(rules: readonly StartRule[]): Uint8Array {
  const mask = new Uint8Array(hoursPerYear);
  for (const rule of rules) {
    const hours = looksAt(rule);
    for (let h = 0; h < hoursPerYear; h++) if (!hours || hours.includes(h % 24)) mask[h] = 1;
  }
  return mask;
}

/**
 * The state of charge below which the engine starts, for each hour: the highest that any rule asks for, 0 for never.
 * Voltage rules are not in it.
 *
 * @param allowed 1 for the hours in which a start is accepted
 * @param dailySunWhM2 sun of each of 365 days, needed by `dull-tomorrow` rules
 */
export function startThresholdYear(
  rules: readonly StartRule[],
  allowed: Uint8Array,
  dailySunWhM2?: Float64Array,
): Float64Array {
  checkStartRules(rules);
  if (allowed.length !== hoursPerYear)
    throw new OutOfRangeError(`allowed must hold ${hoursPerYear} hours, got ${allowed.length}`);
  const threshold = new Float64Array(hoursPerYear);
  for (const rule of rules) {
    if (rule.kind === 'voltage') continue;
    const hours = looksAt(rule);
    let dull: Uint8Array | null = null;
    if (rule.kind === 'dull-tomorrow') {
      if (!dailySunWhM2) throw new TypeError('a dull-tomorrow start rule needs dailySunWhM2');
      dull = lookAheadMask({ dailySunWhM2, dullBelowWhM2: rule.dullBelowWhM2, honesty: rule.honesty });
    }
    for (let h = 0; h < hoursPerYear; h++) {
      if (allowed[h] === 0 || dull?.[h] === 0 || (hours && !hours.includes(h % 24))) continue;
      if (rule.below > threshold[h]!) threshold[h] = rule.below;
    }
  }
  return threshold;
}
