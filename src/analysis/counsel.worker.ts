/** The worker that counsels: one take in, one counsel out. Everything that it computes stands in the core. */

import type { Take } from '../core/answer.ts';
import { type Counsel, counselOf } from '../core/counsel.ts';

const scope = self as unknown as { onmessage: ((event: MessageEvent<Take>) => void) | null; postMessage(message: Counsel): void };

scope.onmessage = ({ data }) => scope.postMessage(counselOf(data));
