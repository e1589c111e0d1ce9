import { calendarSpan } from '../web/format/instants';
import { countText, numberText } from '../web/format/numbers';
import { page, type PageContent } from '../web/http/answer';
import { ActionForm, Field } from '../web/parts/form';
import { Moment } from '../web/parts/instant';
import { Mark } from '../web/parts/mark';
import { EmptyState, Notice } from '../web/parts/notice';
import { DataTable } from '../web/parts/table';
import type { WatchedBuild } from './builds.service';
import { CrewTables } from './crew-table.part';
import type { MappingFault } from './mapping-fault';
import { SlateFiguresPart } from './slate-figures.part';
import type { ProposalFigures } from './slate-summary.query';
import type { SlateView } from './slate-view.query';
import { WeekendFloor } from './weekend-floor.part';

export interface SlatePageProps {
  readonly slug: string;
  readonly language: string;
  readonly timeZone: string;
  readonly view: SlateView;
  /** Latest first. */
  readonly builds: readonly WatchedBuild[];
  readonly canChange: boolean;
  /** Suggested time for a build. */
  readonly seconds: number;
  /** What a form asked for and could not be done, a sentence each. */
  readonly refusals?: readonly string[];
}

/** One slate: figures, the weekend as a picture and as a table, building, proposals. */
export function slatePage(props: SlatePageProps): PageContent {
  const { view, slug, language } = props;
  const { summary, review } = view;
  const address = `/${slug}/slates/${summary.id}`;
  return page({
    title: summary.name,
    ...(props.refusals === undefined ? {} : { status: 409 }),
    body: (
      <>
        <p class="trail">
          <a href={`/${slug}`}>Slates</a>
        </p>
        <div>
          <h1>{summary.name}</h1>
          <p class="quiet">{calendarSpan(summary.fromDate, summary.toDate, language)}</p>
        </div>
        {props.refusals === undefined ? null : (
          <Notice tone="fault">
            {props.refusals.map((reason) => (
              <p key={reason}>{reason}</p>
            ))}
          </Notice>
        )}
        <Standing {...props} address={address} />
        <SlateFiguresPart view={view} language={language} />
        {review.reasons.length === 0 ? null : (
          <Notice tone="fault">
            <h2>These crews break rules</h2>
            <ul>
              {review.reasons.map((reason) => (
                <li key={reason}>{reason}</li>
              ))}
            </ul>
          </Notice>
        )}
        <section class="stack" id="crews">
          <h2>The weekend</h2>
          {view.games.length === 0 ? (
            <EmptyState>
              <p>The slate has no games yet.</p>
              <p>
                Bring in games of its dates on <a href={`/${slug}/imports`}>the page for lists</a>; building
                takes them in.
              </p>
            </EmptyState>
          ) : (
            <>
              <WeekendFloor games={view.games} language={language} />
              <CrewTables games={view.games} language={language} slug={slug} />
            </>
          )}
        </section>
        <div class="beside">
          {props.canChange ? <BuildSheet {...props} address={address} /> : null}
          <FaultSheet faults={review.faults} slug={slug} />
        </div>
        <Proposals {...props} address={address} />
      </>
    ),
  });
}

interface Addressed extends SlatePageProps {
  readonly address: string;
}

/** Where the slate stands, and the next step. */
function Standing({ view: { summary }, builds, address, canChange, timeZone }: Addressed) {
  const { unpublished, published, seats } = summary;
  const changes = unpublished.added + unpublished.revised + unpublished.ended;
  const running = builds.find(({ state }) => state === 'waiting' || state === 'solving');
  return (
    <div class="stack">
      {running === undefined ? null : (
        <Notice tone="plain">
          <p>
            It is being built just now. <a href={`${address}/builds/${running.id}`}>Watch it</a>
          </p>
        </Notice>
      )}
      <div class="row">
        <Mark state={published === null ? 'planned' : changes > 0 ? 'attention' : 'accepted'}>
          {published === null ? (
            'Nobody has been told anything yet.'
          ) : (
            <>
              Published on <Moment at={published.at} zone={timeZone} />
              {changes === 0
                ? '. Everybody knows how it stands.'
                : `, ${countText(changes, 'change', 'changes')} since.`}
            </>
          )}
        </Mark>
        {changes > 0 && canChange ? (
          <a class="button first" href={`${address}/publication`}>
            Look over and publish
          </a>
        ) : null}
        {seats.filled === 0 && canChange && running === undefined ? (
          <a class="button first" href="#build">
            Build the crews
          </a>
        ) : null}
      </div>
    </div>
  );
}

function BuildSheet({ address, seconds, builds }: Addressed) {
  const [latest] = builds;
  return (
    <section class="sheet" id="build">
      <h2>Build</h2>
      <p class="quiet">
        Finds legal crews for all games at once and proves how good they are. Nobody is told anything by it,
        and locked seats stay as they are.
      </p>
      {latest?.state === 'failed' ? (
        <Notice tone="fault">
          <p>The last build could not be done:</p>
          {(latest.fault ?? 'The reason is in the log of the service.').split('\n').map((line) => (
            <p key={line}>{line}</p>
          ))}
        </Notice>
      ) : null}
      <ActionForm action={`${address}/builds`} class="inline">
        <Field
          name="seconds"
          label="Seconds to spend"
          hint="Longer finds better crews."
          type="number"
          min={1}
          max={3600}
          required
          value={String(seconds)}
        />
        <button class="first" type="submit">
          Build
        </button>
      </ActionForm>
    </section>
  );
}

const severityMarks = { stops: 'fault', 'left-out': 'attention', note: 'none' } as const;
const severityWords = { stops: 'Stops building: ', 'left-out': 'Left out: ', note: '' } as const;
const linkPaths = { official: '/officials', game: '/games', venue: '/venues', slate: '/slates' } as const;

/** What should be mended, each with the way there. */
function FaultSheet({ faults, slug }: { faults: readonly MappingFault[]; slug: string }) {
  if (faults.length === 0) return null;
  return (
    <section class="sheet" id="to-mend">
      <h2>To mend</h2>
      <ul class="plain">
        {faults.map(({ severity, message, link }) => (
          <li key={`${link.id} ${message}`}>
            <Mark state={severityMarks[severity]}>
              <b>{severityWords[severity]}</b>
              {message}{' '}
              {link.kind === 'slate' ? null : (
                <a href={`/${slug}${linkPaths[link.kind]}/${link.id}`}>Go there</a>
              )}
            </Mark>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Proposals({ view, address, language, timeZone, canChange }: Addressed) {
  if (view.proposals.length === 0) return null;
  const chosenId = view.summary.chosen?.id;
  const number = (value: number, digits = 1) => numberText(value, language, digits);
  return (
    <section class="stack" id="proposals">
      <h2>Proposals</h2>
      <DataTable<ProposalFigures>
        caption={<span class="out-of-sight">What the builds came to, latest first</span>}
        rows={view.proposals}
        keyOf={(proposal) => proposal.id}
        columns={[
          { name: 'Proposal', cell: (proposal) => proposal.label },
          { name: 'Made', cell: (proposal) => <Moment at={proposal.createdAt} zone={timeZone} /> },
          { name: 'Open seats', isNumber: true, cell: (proposal) => String(proposal.openSeats) },
          { name: 'Cost', isNumber: true, cell: (proposal) => number(proposal.totalCost) },
          {
            name: 'No slate costs less than',
            isNumber: true,
            cell: (proposal) => (proposal.bound === null ? 'not proven' : number(proposal.bound)),
          },
          { name: 'Seconds', isNumber: true, cell: (proposal) => number(proposal.seconds) },
          {
            name: 'Use',
            cell: (proposal) =>
              proposal.id === chosenId ? (
                <Mark state="chosen">chosen</Mark>
              ) : canChange ? (
                <ActionForm action={`${address}/chosen-proposal`}>
                  <input type="hidden" name="proposalId" value={proposal.id} />
                  <input type="hidden" name="version" value={String(view.summary.version)} />
                  <button type="submit">
                    Choose<span class="out-of-sight"> {proposal.label}</span>
                  </button>
                </ActionForm>
              ) : (
                ''
              ),
          },
        ]}
      />
    </section>
  );
}
