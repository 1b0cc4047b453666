/** Lets a screen follow a part of what is kept. */

import { FollowedPart } from './followed-part.ts';
import type { Kept } from './kept.ts';

export class KeptPart<T> extends FollowedPart<Kept, T> {}
