import type { SiteMount } from './schema/array.js';

/** A mount whose tilt the owner chooses. */
export type TiltedMount = Extract<SiteMount, { kind: 'fixed' | 'seasonal' | 'pole' }>;

/** Whether the owner chooses a mount's tilt, for the year or by date; the others tilt by themselves. */
export const isTilted = (mount: SiteMount): mount is TiltedMount =>
  mount.kind === 'fixed' || mount.kind === 'seasonal' || mount.kind === 'pole';
