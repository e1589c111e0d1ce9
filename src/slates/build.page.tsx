import { numberText } from '../web/format/numbers';
import { page, type PageContent } from '../web/http/answer';
import { ActionForm } from '../web/parts/form';
import { Figures } from '../web/parts/figures';
import { Notice } from '../web/parts/notice';
import type { WatchedBuild } from './builds.service';

export interface BuildPageProps {
  readonly slug: string;
  readonly language: string;
  readonly slateName: string;
  readonly build: WatchedBuild;
  readonly now: Date;
  readonly canChange: boolean;
}

/** The figures of a running build as texts, by the names that the page and its events share. */
export interface BuildFigures {
  readonly state: string;
  readonly elapsed: number;
  readonly seconds: string;
  readonly cost: string;
  readonly bound: string;
  readonly openSeats: string;
}

export function buildFigures(build: WatchedBuild, now: Date, language: string): BuildFigures {
  const { progress } = build;
  const elapsed =
    build.startedAt === null ? 0 : Math.max(0, (now.getTime() - build.startedAt.getTime()) / 1000);
  return {
    state:
      build.state === 'waiting'
        ? 'waits for its turn'
        : build.isStopRequested
          ? 'about to stop'
          : 'being built',
    elapsed: Math.min(elapsed, build.secondsLimit),
    seconds: numberText(elapsed, language),
    cost: progress === null ? '–' : numberText(progress.totalCost, language, 1),
    bound: progress?.bound === null || progress === null ? '–' : numberText(progress.bound, language, 1),
    openSeats: progress === null ? '–' : numberText(progress.openSeats, language),
  };
}

/** A build while it runs; with script it follows by itself, without it asks again every few seconds. */
export function buildPage(props: BuildPageProps): PageContent {
  const { build, slug, language } = props;
  const slateAddress = `/${slug}/slates/${build.slateId}`;
  const address = `${slateAddress}/builds/${build.id}`;
  const isRunning = build.state === 'waiting' || build.state === 'solving';
  const figures = buildFigures(build, props.now, language);
  return page({
    title: `${build.label} of ${props.slateName}`,
    ...(isRunning ? { refreshSeconds: 3 } : {}),
    body: (
      <>
        <p class="trail">
          <a href={`/${slug}`}>Slates</a> / <a href={slateAddress}>{props.slateName}</a>
        </p>
        <h1>{build.label}</h1>
        {isRunning ? (
          <section class="stack" data-watch={`${address}/events`}>
            <p>
              It is <span data-figure="state">{figures.state}</span>. You may leave this page; nothing is
              lost.
            </p>
            <label class="out-of-sight" for="elapsed">
              Time spent
            </label>
            <progress id="elapsed" data-figure="elapsed" max={build.secondsLimit} value={figures.elapsed} />
            <Figures>
              <WatchedFigure
                name={`Seconds of ${numberText(build.secondsLimit, language)}`}
                figure="seconds"
                text={figures.seconds}
              />
              <WatchedFigure name="Open seats" figure="openSeats" text={figures.openSeats} />
              <WatchedFigure name="Cost so far" figure="cost" text={figures.cost} />
              <WatchedFigure name="No slate costs less than" figure="bound" text={figures.bound} />
            </Figures>
            {props.canChange && !build.isStopRequested ? (
              <ActionForm action={`${address}/stop`}>
                <button type="submit">Stop and keep the best so far</button>
              </ActionForm>
            ) : null}
          </section>
        ) : (
          <Finished build={build} slateAddress={slateAddress} />
        )}
      </>
    ),
  });
}

function WatchedFigure(props: { name: string; figure: string; text: string }) {
  return (
    <div class="figure">
      <dt>{props.name}</dt>
      <dd class="amount" data-figure={props.figure}>
        {props.text}
      </dd>
    </div>
  );
}

function Finished({ build, slateAddress }: { build: WatchedBuild; slateAddress: string }) {
  return build.state === 'failed' ? (
    <Notice tone="fault">
      <p>It could not be built:</p>
      {(build.fault ?? 'The reason is in the log of the service.').split('\n').map((line) => (
        <p key={line}>{line}</p>
      ))}
      <p>
        <a href={`${slateAddress}#to-mend`}>See what is to mend</a>
      </p>
    </Notice>
  ) : (
    <Notice tone="good">
      <p>It is built.</p>
      <p>
        <a class="button first" href={slateAddress}>
          See the crews
        </a>
      </p>
    </Notice>
  );
}
