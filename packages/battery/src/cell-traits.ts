/** Whose equations a cell follows: a folder of this room each. */
export type CellKind = 'lead-acid' | 'lithium';

/** What sets a kind of cell apart in use, besides its figures. */
export interface CellTraits {
  kind: CellKind;
  /** The gas of overcharge leaves through vents with its water, recombines to heat in the cell, or there is none. */
  gas: 'vented' | 'recombined' | 'none';
  /** At this temperature and below it takes no charge, degC; `null` for cells that take some however cold. */
  noChargeAtC: number | null;
  /** Its plates sulphate when it is not charged full every week or two. */
  sulphates: boolean;
  /** Sized by hand as IEEE 1013 does lead-acid: a bound to the daily discharge, and more capacity for the cold. */
  leadAcidSizing: boolean;
  /** Its rest voltage bends so sharply at both ends that a discharge is solved at its middle as well as at its start. */
  bendsAtEnds: boolean;
}

export const ventedLeadAcid: CellTraits = {
  kind: 'lead-acid',
  gas: 'vented',
  noChargeAtC: null,
  sulphates: true,
  leadAcidSizing: true,
  bendsAtEnds: false,
};

export const sealedLeadAcid: CellTraits = { ...ventedLeadAcid, gas: 'recombined' };

/** No charge at 0 degC and below: makers' data sheets agree; `chargeLimitByTemp` says how it comes back above. */
export const lithiumTraits: CellTraits = {
  kind: 'lithium',
  gas: 'none',
  noChargeAtC: 0,
  sulphates: false,
  leadAcidSizing: false,
  bendsAtEnds: true,
};
