/** How alike belts are that are compared: what they share cancels from the ratio of their forces, what each has of its own does not. */

/** `one-belt`: the same piece, read twice. `same-roll`: cut from one roll. `two-rolls`: of one kind. `two-kinds`: they share next to nothing. */
export type Likeness = 'one-belt' | 'same-roll' | 'two-rolls' | 'two-kinds';

/** What one belt has of its own, standard uncertainties: density and stiffness relative, fixity of each end. All judgement: nobody has published any. */
export interface OwnDoubt {
  readonly linearDensityRelative: number;
  readonly bendingStiffnessRelative: number;
  readonly fixity: number;
}

export const OWN_DOUBT: Readonly<Record<Likeness, OwnDoubt>> = {
  'one-belt': { linearDensityRelative: 0, bendingStiffnessRelative: 0, fixity: 0 },
  'same-roll': { linearDensityRelative: 0.005, bendingStiffnessRelative: 0.05, fixity: 0.1 },
  'two-rolls': { linearDensityRelative: 0.03, bendingStiffnessRelative: 0.2, fixity: 0.2 },
  'two-kinds': { linearDensityRelative: 0.1, bendingStiffnessRelative: 0.6, fixity: 0.3 },
};
