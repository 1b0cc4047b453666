/** Each synthesised sound is made from a seed and nothing else: the generator of the mathematics, under the synthesiser's own roof. */

export { createRandom, type Random } from '../math/random.ts';
