// Goal: publishing tells exactly those concerned. Method: one game, every way in which it can differ from what was told.
import {
  officialsConcerned,
  previewPublication,
  type PreviewAssignment,
  type PreviewGame,
  type PreviewSeat,
} from '../../../src/slates/preview-publication';

const policy = { arrivalLeadMinutes: 20, wrapUpMinutes: 15 };
const game: PreviewGame = {
  id: 'g',
  status: 'CONFIRMED',
  venueId: 'v',
  startsAt: new Date('2026-11-28T14:00:00Z'),
  durationMinutes: 90,
};
const told = (overrides: Partial<PreviewAssignment>): PreviewAssignment => ({
  id: 'a',
  gameId: 'g',
  seat: 'chief',
  officialId: 'o1',
  venueId: 'v',
  startsAt: new Date('2026-11-28T14:00:00Z'),
  endsAt: new Date('2026-11-28T15:30:00Z'),
  ...overrides,
});
const seats = (chief: string | null, umpire: string | null): PreviewSeat[] => [
  { gameId: 'g', seat: 'chief', officialId: chief },
  { gameId: 'g', seat: 'umpire', officialId: umpire },
];
const preview = (input: { game?: PreviewGame; seats: PreviewSeat[]; assignments?: PreviewAssignment[] }) =>
  previewPublication({
    games: [input.game ?? game],
    seats: input.seats,
    assignments: input.assignments ?? [],
    policy,
  });

describe('publication preview', () => {
  it('asks new people, with the duty around the game', () => {
    const result = preview({ seats: seats('o1', 'o2') });
    expect(result.added.map(({ seat, officialId }) => [seat, officialId])).toEqual([
      ['chief', 'o1'],
      ['umpire', 'o2'],
    ]);
    expect(result.added[0]?.told).toEqual({
      venueId: 'v',
      startsAt: new Date('2026-11-28T14:00:00Z'),
      endsAt: new Date('2026-11-28T15:30:00Z'),
      dutyStartsAt: new Date('2026-11-28T13:40:00Z'),
      dutyEndsAt: new Date('2026-11-28T15:45:00Z'),
    });
  });

  it('leaves alone who was told the same', () => {
    expect(preview({ seats: seats('o1', null), assignments: [told({})] })).toEqual({
      added: [],
      revised: [],
      ended: [],
      unchanged: 1,
    });
  });

  it.each([
    ['time', { startsAt: new Date('2026-11-28T15:00:00Z') }],
    ['time', { durationMinutes: 100 }],
    ['venue', { venueId: 'w' }],
  ])('asks again when the %s changed', (difference, change) => {
    const result = preview({
      game: { ...game, ...change },
      seats: seats('o1', null),
      assignments: [told({})],
    });
    expect(result.revised).toMatchObject([
      { assignmentId: 'a', officialId: 'o1', differences: [difference] },
    ]);
    expect(result.added).toEqual([]);
  });

  it('ends as replaced, withdrawn or cancelled', () => {
    const assignments = [told({})];
    expect(preview({ seats: seats('o2', null), assignments }).ended).toMatchObject([{ reason: 'replaced' }]);
    expect(preview({ seats: seats(null, null), assignments }).ended).toMatchObject([{ reason: 'withdrawn' }]);
    const cancelled = preview({
      game: { ...game, status: 'CANCELLED' },
      seats: seats('o1', null),
      assignments,
    });
    expect(cancelled.ended).toMatchObject([{ reason: 'game-cancelled' }]);
    expect(cancelled.added).toEqual([]);
  });

  it('keeps the assignments of two who exchange their seats', () => {
    const result = preview({
      seats: seats('o2', 'o1'),
      assignments: [told({}), told({ id: 'b', seat: 'umpire', officialId: 'o2' })],
    });
    expect(result.added).toEqual([]);
    expect(result.ended).toEqual([]);
    expect(result.revised.map(({ assignmentId, seat }) => [assignmentId, seat])).toEqual([
      ['a', 'umpire'],
      ['b', 'chief'],
    ]);
  });

  it('names everybody concerned once', () => {
    const result = preview({
      seats: seats('o3', 'o1'),
      assignments: [told({}), told({ id: 'b', seat: 'umpire', officialId: 'o2' })],
    });
    expect(officialsConcerned(result)).toEqual(['o1', 'o2', 'o3']);
  });
});
