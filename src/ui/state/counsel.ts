/** Asks for counsel with every new answer, and tells it to the store when it comes. */

import type { Counsellor } from '../../ports.ts';
import type { Store } from './store.ts';
import { soundsOf } from './take.ts';

export function followCounsel(store: Store, counsellor: Counsellor): void {
  let asked = store.state.answer;
  store.addEventListener('change', () => {
    const { answer, take, understood } = store.state;
    if (answer === asked) return;
    asked = answer;
    if (!take || !answer.reading) return;
    counsellor.ask(soundsOf(take, understood.setup), (counsel) => store.dispatch({ kind: 'counselled', about: answer, counsel }));
  });
}
