/** Every fixture made anew, the same bytes each time; `make-fixtures.ts` writes them, a test compares them with what is there. */

import { beltFixtures } from './belt-fixtures.ts';
import type { Fixture } from './fixture-truth.ts';
import { brokenFixtures, noBeltFixtures } from './no-belt-fixtures.ts';

export const allFixtures = (): readonly Fixture[] => [...beltFixtures(), ...noBeltFixtures(), ...brokenFixtures()];
