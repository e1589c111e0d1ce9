import type { ComponentChildren } from 'preact';
import type { AssetPaths } from '../assets';
import type { NavigationEntry, Visitor } from '../visitor';
import { ActionForm } from '../parts/form';

export interface PageFrameProps {
  readonly title: string;
  readonly visitor: Visitor | null;
  readonly navigation: readonly NavigationEntry[];
  /** Path of the page at hand, without its query. */
  readonly path: string;
  readonly assets: AssetPaths;
  /** Seconds after which a browser without script asks again; for pages that wait for something. */
  readonly refreshSeconds?: number;
  readonly children: ComponentChildren;
}

/** The frame of every page: head with the ways, the page itself, foot with the zone its times are in. */
export function PageFrame(props: PageFrameProps) {
  const { visitor } = props;
  const association = visitor?.association ?? null;
  return (
    <html lang={association?.language ?? 'en-GB'}>
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>{`${props.title} · ${association?.name ?? 'Crewloom'}`}</title>
        <link rel="stylesheet" href={props.assets.style} />
        <link rel="icon" href={props.assets.icon} type="image/svg+xml" />
        <script src={props.assets.script} defer />
        {props.refreshSeconds === undefined ? null : (
          <noscript>
            <meta http-equiv="refresh" content={String(props.refreshSeconds)} />
          </noscript>
        )}
      </head>
      <body>
        <a class="skip" href="#page">
          Skip to the page
        </a>
        <Head {...props} />
        <main id="page" class="wide">
          {props.children}
        </main>
        <footer class="foot">
          <div class="wide">
            <span>
              {association === null
                ? 'Crewloom'
                : `${association.name}. Times are those of each venue's own zone (${association.timeZone} unless stated).`}
            </span>
            <a href="/api">For programs: the API</a>
          </div>
        </footer>
      </body>
    </html>
  );
}

function Head({ visitor, navigation, path }: PageFrameProps) {
  const association = visitor?.association ?? null;
  const home = association === null ? '/' : `/${association.slug}`;
  const roles = visitor?.roles ?? [];
  const ways = navigation.filter((way) => way.roles.some((role) => roles.includes(role)));
  return (
    <header class="head">
      <div class="wide">
        <a class="brand" href={home}>
          <svg width="22" height="22" viewBox="0 0 22 22" aria-hidden="true">
            <circle cx="11" cy="11" r="9.5" fill="none" stroke="currentColor" stroke-width="2" />
            <path
              d="M11 1.5v19M1.5 11h19M4.5 4c4 4 4 10 0 14M17.5 4c-4 4-4 10 0 14"
              fill="none"
              stroke="currentColor"
              stroke-width="1.4"
            />
          </svg>
          {association?.name ?? 'Crewloom'}
        </a>
        {association === null || ways.length === 0 ? null : (
          <nav aria-label="Main">
            <ul class="ways">
              {ways.map((way) => {
                const href = `${home}${way.path}`;
                const section = way.section ?? way.path;
                const isHere =
                  path === href || (section !== '' && `${path}/`.startsWith(`${home}${section}/`));
                return (
                  <li key={way.path}>
                    <a href={href} {...(isHere ? { 'aria-current': 'page' as const } : {})}>
                      {way.label}
                    </a>
                  </li>
                );
              })}
            </ul>
          </nav>
        )}
        {visitor === null ? null : (
          <div class="who">
            <a href="/account">{visitor.displayName}</a>
            <ActionForm action="/sign-out">
              <button class="as-link" type="submit">
                Sign out
              </button>
            </ActionForm>
          </div>
        )}
      </div>
    </header>
  );
}
