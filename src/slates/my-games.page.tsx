import type { AssociationPolicy } from '../access/association-policy';
import { courtText } from '../places/court-text';
import { dayOf, timeOf } from '../web/format/instants';
import { durationText } from '../web/format/numbers';
import { page, type PageContent } from '../web/http/answer';
import { ActionForm, Field } from '../web/parts/form';
import { Moment } from '../web/parts/instant';
import { Mark } from '../web/parts/mark';
import { EmptyState, Notice } from '../web/parts/notice';
import { leaveBy } from './day-journeys';
import type { OfficialDuty } from './official-days.query';
import { seatWords } from './seat-words';

export interface MyGamesProps {
  readonly slug: string;
  readonly language: string;
  readonly policy: Pick<AssociationPolicy, 'venueArrivalMinutes' | 'travelMarginMinutes'>;
  /** By tip-off; the coming ones, and those of the past that are worth showing. */
  readonly coming: readonly OfficialDuty[];
  /** What became of the last reply, when it could not be taken. */
  readonly notice?: string;
}

/** An official's coming games, made for a phone: what is next, when to leave, with whom, and the answer. */
export function myGamesPage(props: MyGamesProps): PageContent {
  const [next, ...later] = props.coming;
  return page({
    title: 'My games',
    ...(props.notice === undefined ? {} : { status: 409 }),
    body: (
      <div class="narrow stack">
        <h1>My games</h1>
        {props.notice === undefined ? null : (
          <Notice tone="fault">
            <p>{props.notice}</p>
          </Notice>
        )}
        {next === undefined ? (
          <EmptyState>
            <p>No games lie ahead of you.</p>
            <p>
              They show up here and in <a href={`/${props.slug}/my-calendar`}>your calendar</a> once they are
              published.
            </p>
          </EmptyState>
        ) : (
          <>
            <h2>Next</h2>
            <GameSheet duty={next} {...props} />
          </>
        )}
        {later.length === 0 ? null : (
          <>
            <h2>Later</h2>
            {later.map((duty) => (
              <GameSheet key={duty.assignment.id} duty={duty} {...props} />
            ))}
          </>
        )}
        <p>
          <a href={`/${props.slug}/my-calendar`}>Have them in your own calendar</a>
        </p>
      </div>
    ),
  });
}

function GameSheet(props: MyGamesProps & { duty: OfficialDuty }) {
  const { duty, slug } = props;
  const { assignment, game, venue, partner } = duty;
  const zone = venue.timeZone;
  const isMoved = game.status === 'CONFIRMED' && game.startsAt.getTime() !== assignment.startsAt.getTime();
  return (
    <article class="sheet" id={assignment.id}>
      <h3>
        <Moment at={assignment.startsAt} zone={zone} />
      </h3>
      <p>
        {game.home.name} – {game.away.name}
        <br />
        <small>
          {game.division.name}, game {game.number}
        </small>
      </p>
      {game.status === 'CONFIRMED' ? null : (
        <Mark state="attention">
          {game.status === 'CANCELLED' ? 'The game is cancelled.' : 'Date and time are not settled yet.'}
        </Mark>
      )}
      {isMoved ? <Mark state="attention">A change of this game is on its way to you.</Mark> : null}
      <dl class="pairs">
        <dt>You are</dt>
        <dd>{seatWords[assignment.seat]}</dd>
        <dt>With</dt>
        <dd>
          {partner === null ? (
            <Mark state="open">nobody yet</Mark>
          ) : (
            <>
              {partner.name} <small>({partner.levelName})</small>
            </>
          )}
        </dd>
        <dt>Where</dt>
        <dd>
          <a href={`/${slug}/venues/${venue.id}`}>{venue.name}</a>
          {game.court === null ? '' : `, ${courtText(game.court.name)}`}
          <br />
          <small>
            {venue.address}
            {venue.town === '' ? '' : `, ${venue.town}`}
          </small>
        </dd>
        <dt>On court</dt>
        <dd>by {timeOf(assignment.dutyStartsAt, zone)}</dd>
        <Way {...props} />
      </dl>
      <p>
        <a class="button" href={`/${slug}/games/${game.id}/briefing`}>
          Briefing
        </a>
      </p>
      <Answer {...props} />
    </article>
  );
}

/** When to set out, or how to come on from the game before. */
function Way({ duty, policy, language }: MyGamesProps & { duty: OfficialDuty }) {
  const { journey, assignment, venue } = duty;
  const at = (instant: Date) => timeOf(instant, venue.timeZone);
  if (journey === null) return null;
  switch (journey.kind) {
    case 'from-home': {
      const arriveAt = new Date(assignment.startsAt.getTime() - policy.venueArrivalMinutes * 60_000);
      const leaveAt = leaveBy(arriveAt, journey.travel, policy.travelMarginMinutes);
      const minutes = Math.ceil(journey.travel.minutes);
      const isDayBefore =
        dayOf(leaveAt, venue.timeZone, language) !== dayOf(assignment.startsAt, venue.timeZone, language);
      return (
        <>
          <dt>Leave home</dt>
          <dd>
            <b>
              by {at(leaveAt)}
              {isDayBefore ? ' the day before' : ''}
            </b>
            <br />
            <small>
              about {durationText(minutes)} on the way and {policy.travelMarginMinutes} min to spare, to be
              there at {at(arriveAt)}
            </small>
          </dd>
        </>
      );
    }
    case 'from-venue':
      return (
        <>
          <dt>Before it</dt>
          <dd>
            you come from {journey.from.venueName}, free to leave at {at(journey.from.dutyEndsAt)}; about{' '}
            {durationText(Math.ceil(journey.travel.minutes))} on the way
          </dd>
        </>
      );
    case 'already-there':
      return (
        <>
          <dt>Before it</dt>
          <dd>you are in the building already</dd>
        </>
      );
    case 'unknown':
      return (
        <>
          <dt>Leave home</dt>
          <dd>not known: the {journey.missing} is missing</dd>
        </>
      );
  }
}

/** The answer so far, and the buttons. Each is bound to the game as it is shown here. */
function Answer({ duty: { assignment }, slug }: MyGamesProps & { duty: OfficialDuty }) {
  const address = `/${slug}/my-games/${assignment.id}/reply`;
  const sequence = <input type="hidden" name="sequence" value={String(assignment.sequence)} />;
  return (
    <div class="stack screen-only">
      {assignment.reply === 'ACCEPTED' ? (
        <p>
          <Mark state="accepted">You have accepted.</Mark>
        </p>
      ) : (
        <>
          <p>
            <Mark state="asked">Please answer.</Mark>
          </p>
          <ActionForm action={address}>
            {sequence}
            <input type="hidden" name="reply" value="ACCEPTED" />
            <button class="first" type="submit">
              I take it
            </button>
          </ActionForm>
        </>
      )}
      <details>
        <summary>{assignment.reply === 'ACCEPTED' ? 'I cannot come after all' : 'I cannot'}</summary>
        <ActionForm action={address}>
          {sequence}
          <input type="hidden" name="reply" value="DECLINED" />
          <Field name="reason" label="What keeps you?" hint="Read by your assignor only." maxLength={500} />
          <button type="submit">Give it back</button>
        </ActionForm>
      </details>
    </div>
  );
}
