import type { Site } from '@wintergap/site';

type Places = Pick<Site, 'rooms'>;

/** Air of the heated rooms, degC: warmer than outdoors by `rooms.above`, and never below `rooms.atLeast`. */
export function roomsAirC({ rooms }: Places, outdoorC: Float64Array): Float64Array {
  const { above, atLeast } = rooms;
  const airC = new Float64Array(outdoorC.length);
  for (let h = 0; h < airC.length; h++) airC[h] = Math.max(outdoorC[h]! + above, atLeast);
  return airC;
}

/**
 * Air around a bank that stands in a place of its own, degC: an unheated hut is warmer than outdoors by `rooms.above`,
 * what sun and walls give.
 */
export function airAround(
  stands: 'rooms' | 'unheated' | 'outdoors',
  site: Places,
  outdoorC: Float64Array,
): Float64Array {
  switch (stands) {
    case 'rooms':
      return roomsAirC(site, outdoorC);
    case 'unheated':
      return outdoorC.map((airC) => airC + site.rooms.above);
    case 'outdoors':
      return outdoorC;
  }
}
