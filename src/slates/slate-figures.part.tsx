import { numberText } from '../web/format/numbers';
import { Figure, Figures } from '../web/parts/figures';
import { COST_TERMS, type CostBreakdown } from '../solver';
import { costTermWords } from './slate-figures';
import type { SlateView } from './slate-view.query';

/** How good a slate is: seats, driving, and how far at most it is from the best that any legal slate could be. */
export function SlateFiguresPart({ view, language }: { view: SlateView; language: string }) {
  const { seats, games } = view.summary;
  const { cost } = view.review;
  const number = (value: number, digits = 0) => numberText(value, language, digits);
  return (
    <>
      <Figures>
        <Figure name="Games" amount={number(games)}>
          {view.summary.cancelledGames === 0 ? undefined : `${view.summary.cancelledGames} cancelled`}
        </Figure>
        <Figure name="Seats filled" amount={number(seats.filled)} unit={`of ${number(seats.total)}`}>
          {seats.keptOpen === 0 ? undefined : `${seats.keptOpen} kept open`}
        </Figure>
        <Figure name="Open seats" amount={number(seats.open)} />
        <Figure name="Driving" amount={view.kilometres === null ? '–' : number(view.kilometres)} unit="km">
          all tours, home to home
        </Figure>
        <Figure
          name="Cost of the filled seats"
          amount={seats.filled === 0 ? '–' : number(cost.total - cost.open, 1)}
          unit="points"
        />
        <Figure name="From the best possible" amount={distance(view, language)}>
          {proofWords(view)}
        </Figure>
      </Figures>
      <CostTable cost={cost} bound={view.bound} language={language} />
    </>
  );
}

function proofWords({ bound, summary: { chosen } }: SlateView): string {
  if (bound !== null) return 'at most; proven';
  if (chosen === null) return 'proven by building';
  return chosen.bound === null ? 'nothing proven yet' : 'changed since it was proven; build again';
}

/** The gap over the cost of the filled seats: open seats that nobody can fill would drown it otherwise. */
function distance({ bound, review: { cost } }: SlateView, language: string): string {
  if (bound === null) return '–';
  const quality = cost.total - cost.open;
  const gap = Math.max(0, cost.total - bound);
  if (gap <= 1e-6) return '0 %';
  return quality > 0
    ? `${numberText((100 * gap) / quality, language, 1)} %`
    : `${numberText(gap, language, 1)} points`;
}

function CostTable({
  cost,
  bound,
  language,
}: {
  cost: CostBreakdown;
  bound: number | null;
  language: string;
}) {
  const terms = COST_TERMS.filter((term) => cost[term] !== 0);
  if (terms.length === 0) return null;
  return (
    <details>
      <summary>What the cost is made of</summary>
      <table class="narrow">
        <thead>
          <tr>
            <th scope="col">Because of</th>
            <th scope="col" class="number">
              Points
            </th>
          </tr>
        </thead>
        <tbody>
          {terms.map((term) => (
            <tr key={term}>
              <th scope="row">{costTermWords[term]}</th>
              <td class="number">{numberText(cost[term], language, 1)}</td>
            </tr>
          ))}
          <tr>
            <th scope="row">together</th>
            <td class="number">{numberText(cost.total, language, 1)}</td>
          </tr>
          {bound === null ? null : (
            <tr>
              <th scope="row">no legal slate can cost less than</th>
              <td class="number">{numberText(bound, language, 1)}</td>
            </tr>
          )}
        </tbody>
      </table>
    </details>
  );
}
