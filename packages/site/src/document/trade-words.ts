import { nearestHint } from './nearest-word.js';

/** What the trade, or a data sheet, calls something that has another name in a site file; spelled without marks. */
const tradeWords: Readonly<Record<string, readonly string[]>> = {
  lfp: ['lithium-iron-phosphate'],
  lifepo: ['lithium-iron-phosphate'],
  lifepo4: ['lithium-iron-phosphate'],
  lithium: ['lithium-iron-phosphate'],
  lithiumion: ['lithium-iron-phosphate'],
  liion: ['lithium-iron-phosphate'],
  vrla: ['agm', 'gel'],
  sla: ['agm', 'gel'],
  sealed: ['agm', 'gel'],
  sealedleadacid: ['agm', 'gel'],
  absorbedglassmat: ['agm'],
  opzv: ['gel'],
  opzs: ['flooded-lead-acid'],
  fla: ['flooded-lead-acid'],
  flooded: ['flooded-lead-acid'],
  wet: ['flooded-lead-acid'],
  vented: ['flooded-lead-acid'],
  leadacid: ['flooded-lead-acid', 'agm', 'gel'],
  mppt: ['maximum-power'],
  pwm: ['direct'],
  shunt: ['direct'],
  gasoline: ['petrol'],
  benzine: ['petrol'],
  gas: ['petrol', 'propane'],
  lpg: ['propane'],
  lp: ['propane'],
  lpgas: ['propane'],
  butane: ['propane'],
  gasoil: ['diesel'],
  heatingoil: ['diesel'],
  tracker: ['pole', 'one-axis', 'two-axis'],
  tracking: ['pole', 'one-axis', 'two-axis'],
  azimuthtracker: ['pole'],
  polemount: ['pole'],
  singleaxis: ['one-axis'],
  '1axis': ['one-axis'],
  dualaxis: ['two-axis'],
  doubleaxis: ['two-axis'],
  '2axis': ['two-axis'],
  roof: ['fixed'],
  ground: ['fixed'],
  rack: ['fixed'],
  wall: ['fixed'],
  adjustable: ['seasonal'],
  monocrystalline: ['crystalline'],
  polycrystalline: ['crystalline'],
  mono: ['crystalline'],
  poly: ['crystalline'],
  cdte: ['thin-film'],
  cigs: ['thin-film'],
  amorphous: ['thin-film'],
  imperial: ['us'],
  si: ['metric'],
  indoors: ['rooms'],
  indoor: ['rooms'],
  outside: ['outdoors'],
  outdoor: ['outdoors'],
};

/** What to add where a word is none of the choices: what the trade's word is called here, or the nearest spelling. */
export function wordHint(written: unknown, choices: readonly string[]): string {
  if (typeof written !== 'string') return '';
  const plain = written.toLowerCase().replace(/[^a-z0-9]/g, '');
  const meant = Object.hasOwn(tradeWords, plain)
    ? tradeWords[plain]!.filter((choice) => choices.includes(choice))
    : choices.filter((choice) => choice.replaceAll('-', '') === plain);
  if (meant.length > 0) return `; "${written}" is written ${meant.join(' or ')} here`;
  return nearestHint(written, choices);
}
