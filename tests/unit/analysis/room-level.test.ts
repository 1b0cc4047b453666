import { expect, test } from 'vitest';
import { RoomLevel } from '../../../src/analysis/room-level.ts';

const MOMENT_S = 1 / 15;

const followed = (levelsDbfs: readonly number[]) => {
  const room = new RoomLevel(MOMENT_S);
  return levelsDbfs.map((level) => room.follow(level));
};
const steady = (seconds: number, levelDbfs: number) => new Array<number>(Math.round(seconds / MOMENT_S)).fill(levelDbfs);

test('not known at once', () => {
  const levels = followed(steady(1, -60));
  expect(levels[0]).toBeUndefined();
  expect(levels.at(-1)).toBe(-60);
});

test('plucks do not raise it', () => {
  const pluck = Array.from({ length: 15 }, (_, index) => -15 - index * 2);
  expect(followed([...steady(1, -60), ...pluck, ...steady(1, -60), ...pluck]).at(-1)).toBe(-60);
});

test('a fan that is switched on becomes the room', () => {
  expect(followed([...steady(5, -60), ...steady(7, -45)]).at(-1)).toBe(-45);
});

test('and the quiet after it is the room at once', () => {
  expect(followed([...steady(5, -45), ...steady(2, -60)]).at(-1)).toBe(-60);
});
