import { createHash } from 'node:crypto';
import { deflateRawSync } from 'node:zlib';
import { patterns } from '@wintergap/report/in-page';
import { columnText } from '../hand-over/column-text.js';
import type { HandOver } from '../hand-over/hand-over.js';
import { pageCode } from './page-code.js';
import { pageStyle } from './style.js';

/**
 * The page in one file: code, engine and weather in it, so that it works from a disk as from a server. The policy in its
 * head lets nothing else run and nothing be fetched.
 *
 * @param savePath where the page may send a site file to be written; `null` where nobody is there to write it
 */
export function livePage(handOver: HandOver, savePath: string | null = null): string {
  const { view, engine, notices } = pageCode();
  const policy = [
    "default-src 'none'",
    `script-src 'sha256-${createHash('sha256').update(view).digest('base64')}'`,
    'worker-src blob:',
    "style-src 'unsafe-inline'",
    'img-src data:',
    `connect-src ${savePath === null ? "'none'" : "'self'"}`,
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  const site = deflateRawSync(columnText(handOver), { level: 9 }).toString('base64');
  const saving = savePath === null ? '' : ` data-save="${savePath}"`;
  return `<!doctype html>
<html lang="en"${saving}>
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${escaped(handOver.written.name)}</title>
<link rel="icon" href="data:,">
<style>${pageStyle}</style>
</head>
<body>
${patterns}
<div id="page"><main><p class="waiting">The first year is being run …</p></main></div>
<noscript>This page runs the years by itself and needs scripts for it.</noscript>
<script type="application/octet-stream" id="site">${site}</script>
<script type="text/plain" id="notices">
${notices}
</script>
<script type="text/plain" id="engine">${engine}</script>
<script type="module">${view}</script>
</body>
</html>
`;
}

const escaped = (text: unknown): string =>
  String(text).replace(/[&<>"]/g, (sign) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[sign]!);
