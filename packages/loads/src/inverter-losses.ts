import { mustLie, OutOfRangeError } from '@wintergap/ground';
import { type Inverter, lossIsSound } from './inverter.js';

/** Efficiency as a data sheet quotes it, 0 to 1. */
export type QuotedEfficiency =
  /**
   * The best value. It is reached at `atShare` of the rating: unless given a third, or more if the idle draw is so
   * large that the rest of the loss would be less than nothing.
   */
  | { kind: 'peak'; efficiency: number; atShare?: number }
  /** The value at full power. What idling leaves of the loss is divided evenly between k1 and k2. */
  | { kind: 'rated'; efficiency: number }
  | { kind: 'peak-and-rated'; peak: number; rated: number }
  /** Three points of a printed curve; `share` is output over rating. The idle draw then follows from them. */
  | { kind: 'three-points'; points: readonly [CurvePoint, CurvePoint, CurvePoint] };

export interface CurvePoint {
  share: number;
  efficiency: number;
}

/** Coefficients closer to zero than this are zero. */
const rounding = 1e-9;

type Losses = Pick<Inverter, 'idleW' | 'proportionalLoss' | 'squareLoss'>;

/**
 * The three loss terms of an inverter from what its data sheet says.
 *
 * With p = output/rating and i = idle/rating the loss per output is 1/eta - 1 = i/p + k1 + k2 p. It is least at
 * p = sqrt(i/k2), and there 1/eta - 1 = k1 + 2 sqrt(i k2). Peak and rated values together give
 * sqrt(k2) = sqrt(i) + sqrt(1/rated - 1/peak).
 *
 * k1 may come out a little below zero, as it does for measured curves that are not quite a parabola.
 *
 * @throws OutOfRangeError when no inverter of this form fits, for example when idling alone costs more than is quoted
 */
export function inverterLosses(powerW: number, idleW: number, quoted: QuotedEfficiency): Losses {
  mustLie('inverter powerW', powerW, 1, 1e9);
  mustLie('inverter idleW', idleW, 0, powerW);
  const i = idleW / powerW;
  switch (quoted.kind) {
    case 'peak': {
      mustLie('peak efficiency', quoted.efficiency, 0.2, 1);
      const lossAtPeak = 1 / quoted.efficiency - 1;
      const { atShare = Math.min(Math.max(1 / 3, i > 0 ? (2 * i) / lossAtPeak : 0), 1) } = quoted;
      mustLie('atShare', atShare, 0.01, 1);
      return checked(idleW, lossAtPeak - (2 * i) / atShare, i / atShare ** 2, powerW);
    }
    case 'rated': {
      mustLie('rated efficiency', quoted.efficiency, 0.2, 1);
      const half = (1 / quoted.efficiency - 1 - i) / 2;
      return checked(idleW, half, half, powerW);
    }
    case 'peak-and-rated': {
      mustLie('peak efficiency', quoted.peak, 0.2, 1);
      mustLie('rated efficiency', quoted.rated, 0.2, quoted.peak);
      const squareLoss = (Math.sqrt(i) + Math.sqrt(1 / quoted.rated - 1 / quoted.peak)) ** 2;
      return checked(idleW, 1 / quoted.peak - 1 - 2 * Math.sqrt(i * squareLoss), squareLoss, powerW);
    }
    case 'three-points':
      return throughPoints(powerW, quoted.points);
  }
}

/** The loss p (1/eta - 1) is a parabola in p; through three points there is one, by Newton's divided differences. */
function throughPoints(powerW: number, points: readonly [CurvePoint, CurvePoint, CurvePoint]): Losses {
  for (const { share, efficiency } of points) {
    mustLie('curve share', share, 0.001, 1.5);
    mustLie('curve efficiency', efficiency, 0.01, 1);
  }
  const [a, b, c] = [...points].sort((one, other) => one.share - other.share) as [CurvePoint, CurvePoint, CurvePoint];
  if (b.share - a.share < 1e-6 || c.share - b.share < 1e-6) throw new OutOfRangeError('curve shares must differ');
  const loss = ({ share, efficiency }: CurvePoint) => share * (1 / efficiency - 1);
  const ab = (loss(b) - loss(a)) / (b.share - a.share);
  const bc = (loss(c) - loss(b)) / (c.share - b.share);
  const k2 = (bc - ab) / (c.share - a.share);
  const k1 = ab - k2 * (a.share + b.share);
  return checked((loss(a) - k1 * a.share - k2 * a.share ** 2) * powerW, k1, k2, powerW);
}

function checked(idleW: number, proportionalLoss: number, squareLoss: number, powerW: number): Losses {
  const losses = {
    idleW: Math.abs(idleW) < rounding ? 0 : idleW,
    proportionalLoss: Math.abs(proportionalLoss) < rounding ? 0 : proportionalLoss,
    squareLoss: Math.abs(squareLoss) < rounding ? 0 : squareLoss,
  };
  if (lossIsSound({ ...losses, powerW })) return losses;
  throw new OutOfRangeError(
    'quoted efficiency and idle draw must leave at least half the idle draw as loss at every load, got ' +
      `idle ${idleW.toPrecision(3)} W, proportional ${proportionalLoss.toPrecision(3)}, square ${squareLoss.toPrecision(3)}`,
  );
}
