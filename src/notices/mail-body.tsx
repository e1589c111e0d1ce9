import { render } from 'preact-render-to-string';
import type { MailContent } from './mail';

/** The message as plain text. */
export function mailText(content: MailContent): string {
  const width = Math.max(0, ...content.facts.map(({ label }) => label.length)) + 2;
  const blocks = [
    content.greeting,
    ...content.paragraphs,
    content.facts.map(({ label, text }) => `${`${label}:`.padEnd(width)} ${oneLine(text)}`).join('\n'),
    content.links.map(({ label, address }) => `${label}:\n${address}`).join('\n\n'),
    content.closing,
  ];
  return `${blocks.filter((block) => block !== '').join('\n\n')}\n`;
}

/** The same words as HTML: no picture, no script, no style sheet, nothing that is fetched. */
export function mailHtml(content: MailContent): string {
  const body = (
    <html lang="en">
      <body>
        <p>{content.greeting}</p>
        {content.paragraphs.map((paragraph) => (
          <p>{paragraph}</p>
        ))}
        {content.facts.length === 0 ? null : (
          <table cellPadding="3">
            {content.facts.map(({ label, text }) => (
              <tr>
                <th>{label}</th>
                <td>{oneLine(text)}</td>
              </tr>
            ))}
          </table>
        )}
        {content.links.map(({ label, address }) => (
          <p>
            <a href={address}>{label}</a>
          </p>
        ))}
        <p>{content.closing}</p>
      </body>
    </html>
  );
  return `<!doctype html>\n${render(body)}`;
}

function oneLine(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}
