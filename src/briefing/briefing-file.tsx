import { render } from 'preact-render-to-string';
import { styleSheet } from '../web/style/style-sheet';
import type { Briefing } from './briefing-document';
import { BriefingPage } from './briefing.page';

/**
 * The briefing as one HTML file that needs nothing beside it: to keep on a phone, or to print.
 *
 * @param language BCP 47 tag
 */
export function briefingFile(briefing: Briefing, language: string): string {
  const document = (
    <html lang={language}>
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>{`${briefing.title} · ${briefing.association}`}</title>
        {/* Our own style sheet, no text from outside. */}
        <style dangerouslySetInnerHTML={{ __html: styleSheet }} />
      </head>
      <body>
        <main class="wide">
          <BriefingPage briefing={briefing} />
        </main>
      </body>
    </html>
  );
  return `<!doctype html>\n${render(document)}\n`;
}
