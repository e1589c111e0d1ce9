import { page, type PageContent } from '../web/http/answer';
import { Mark } from '../web/parts/mark';
import { EmptyState } from '../web/parts/notice';
import { DataTable } from '../web/parts/table';
import type { VenueView } from './venues.service';

/** All venues in use. */
export function venuesPage({ slug, venues }: { slug: string; venues: readonly VenueView[] }): PageContent {
  return page({
    title: 'Venues',
    body: (
      <>
        <h1>Venues</h1>
        {venues.length === 0 ? (
          <EmptyState>
            <p>No venue is known yet.</p>
            <p>They come in as a list, together with their courts and notes.</p>
          </EmptyState>
        ) : (
          <DataTable<VenueView>
            caption={<span class="out-of-sight">Venues by name</span>}
            rows={venues}
            keyOf={({ venue }) => venue.id}
            columns={[
              { name: 'Name', cell: ({ venue }) => <a href={`/${slug}/venues/${venue.id}`}>{venue.name}</a> },
              { name: 'Town', cell: ({ venue }) => venue.town },
              { name: 'Courts', cell: ({ courts }) => courts.map(({ name }) => name).join(', ') },
              {
                name: 'Position',
                cell: ({ position }) =>
                  position === null ? (
                    <Mark state="attention">missing</Mark>
                  ) : (
                    <Mark state="accepted">known</Mark>
                  ),
              },
            ]}
          />
        )}
      </>
    ),
  });
}

const notes = [
  ['entrance', 'Entrance'],
  ['changingRoom', 'Changing room'],
  ['tableSide', 'Table side'],
  ['parking', 'Parking'],
  ['hazards', 'Mind'],
] as const;
const safetyNotes = [
  ['emergencyAddress', 'Address for an emergency call'],
  ['defibrillator', 'Defibrillator'],
  ['firstAid', 'First aid'],
  ['nearestHospital', 'Nearest hospital'],
] as const;

/** One venue: how to get in, and what to know when something happens. */
export function venuePage(props: { slug: string; view: VenueView; emergencyNumber: string }): PageContent {
  const { slug, view } = props;
  const { venue, courts, position } = view;
  return page({
    title: venue.name,
    body: (
      <div class="narrow stack">
        <p class="trail">
          <a href={`/${slug}/venues`}>Venues</a>
        </p>
        <h1>{venue.name}</h1>
        <p>
          {[venue.address, venue.town].filter((part) => part !== '').join(', ')}
          {position === null ? null : (
            <>
              {' '}
              <a href={`geo:${position.latitude},${position.longitude}`}>
                {position.latitude.toFixed(4)}, {position.longitude.toFixed(4)}
              </a>
            </>
          )}
        </p>
        {position === null ? (
          <Mark state="attention">Its position is missing, so nobody can be told when to leave home.</Mark>
        ) : null}
        <dl class="pairs">
          <dt>Courts</dt>
          <dd>{courts.length === 0 ? 'none known' : courts.map(({ name }) => name).join(', ')}</dd>
          <dt>Time zone</dt>
          <dd>{venue.timeZone}</dd>
          <Notes venue={venue} notes={notes} />
        </dl>
        <section class="sheet">
          <h2>In an emergency</h2>
          <p>
            Call <a href={`tel:${props.emergencyNumber}`}>{props.emergencyNumber}</a> first. Do what the
            people there and the emergency service tell you; what stands here may be out of date.
          </p>
          <dl class="pairs">
            <Notes venue={venue} notes={safetyNotes} />
          </dl>
        </section>
      </div>
    ),
  });
}

function Notes<Field extends (typeof notes)[number][0] | (typeof safetyNotes)[number][0]>(props: {
  venue: VenueView['venue'];
  notes: readonly (readonly [Field, string])[];
}) {
  return (
    <>
      {props.notes.map(([field, label]) => (
        <>
          <dt>{label}</dt>
          <dd>{props.venue[field] === '' ? 'not noted' : props.venue[field]}</dd>
        </>
      ))}
    </>
  );
}
