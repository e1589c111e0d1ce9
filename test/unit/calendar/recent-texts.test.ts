import { RecentTexts } from '../../../src/calendar/recent-texts';

// Goal: a rendered feed is used again only for the same state, for so long, and the least asked-for goes first.
const text = (version: string, renderedAt = 0) => ({
  body: version,
  entityTag: `"${version}"`,
  version,
  renderedAt,
});
const at = (milliseconds: number) => new Date(milliseconds);

it('finds the same version while it is young', () => {
  const texts = new RecentTexts({ max: 2, millisecondsMax: 1000 });
  texts.keep('a', text('1'));
  expect(texts.find('a', '1', at(1000))?.body).toBe('1');
  expect(texts.find('a', '1', at(1001))).toBeNull();
  expect(texts.find('a', '2', at(0))).toBeNull();
  // A clock that was set back makes nothing younger than it is.
  expect(texts.find('a', '1', at(-1))).toBeNull();
  expect(texts.find('b', '1', at(0))).toBeNull();
});

it('lets the one go that was asked for longest ago', () => {
  const texts = new RecentTexts({ max: 2, millisecondsMax: 1000 });
  texts.keep('a', text('1'));
  texts.keep('b', text('1'));
  texts.find('a', '1', at(0));
  texts.keep('c', text('1'));
  expect(texts.find('b', '1', at(0))).toBeNull();
  expect(texts.find('a', '1', at(0))).not.toBeNull();
  expect(texts.find('c', '1', at(0))).not.toBeNull();
});
