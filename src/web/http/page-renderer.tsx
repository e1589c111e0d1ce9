import { render } from 'preact-render-to-string';
import { assetPaths } from '../assets';
import { PageContext } from '../frame/frame-context';
import { PageFrame } from '../frame/page-frame';
import type { NavigationEntry, Visitor } from '../visitor';
import type { PageContent } from './answer';

/** What the frame around a page depends on. */
export interface PageSurroundings {
  readonly visitor: Visitor | null;
  readonly navigation: readonly NavigationEntry[];
  /** Path of the request, with or without its query. */
  readonly url: string;
  readonly formToken: string;
}

/** The complete document of a page. */
export function renderPage(content: PageContent, surroundings: PageSurroundings): string {
  const { visitor, formToken } = surroundings;
  const document = (
    <PageContext.Provider value={{ formToken, language: visitor?.association?.language ?? 'en-GB' }}>
      <PageFrame
        title={content.title}
        visitor={visitor}
        navigation={surroundings.navigation}
        path={surroundings.url.replace(/[?#].*$/, '')}
        assets={assetPaths}
        {...(content.refreshSeconds === undefined ? {} : { refreshSeconds: content.refreshSeconds })}
      >
        {content.body}
      </PageFrame>
    </PageContext.Provider>
  );
  return `<!doctype html>\n${render(document)}`;
}
