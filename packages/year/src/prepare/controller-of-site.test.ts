import { expect, test } from 'vitest';
import { controllerOf } from './controller-of-site.js';

test('a direct controller has the limits that are written and no others', () => {
  const direct = { kind: 'direct', nightDraw: 1 } as const;
  expect(controllerOf(direct as never)).toEqual({ kind: 'direct', nightDrawW: 1 });
  expect(controllerOf({ ...direct, maxCurrent: 30, maxVoltage: 50 } as never)).toEqual({
    kind: 'direct',
    nightDrawW: 1,
    maxCurrentA: 30,
    maxVoltageV: 50,
  });
});

test('a maximum-power controller has one efficiency or a curve of it', () => {
  const written = { kind: 'maximum-power', nightDraw: 2, maxCurrent: 60, maxVoltage: 150 } as const;
  const limits = { kind: 'maximum-power', nightDrawW: 2, maxCurrentA: 60, maxVoltageV: 150 };
  expect(controllerOf({ ...written, efficiency: 0.97 } as never)).toEqual({ ...limits, efficiency: 0.97 });
  const curve = { at: [0.1, 1], is: [0.9, 0.96] };
  expect(controllerOf({ ...written, efficiency: curve } as never)).toEqual({
    ...limits,
    efficiency: { loadFraction: [0.1, 1], efficiency: [0.9, 0.96] },
  });
});
