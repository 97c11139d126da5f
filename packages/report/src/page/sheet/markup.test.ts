import fc from 'fast-check';
import { parseHTML } from 'linkedom';
import { expect, test } from 'vitest';
import { html, rawMarkup } from './markup.js';

test('text in a template cannot become a tag or leave an attribute', () => {
  const evil = `<script>alert("x")</script>' onload='y`;
  expect(html`<p title="${evil}">${evil}</p>`.markup).toBe(
    '<p title="&lt;script&gt;alert(&quot;x&quot;)&lt;/script&gt;&#39; onload=&#39;y">' +
      '&lt;script&gt;alert(&quot;x&quot;)&lt;/script&gt;&#39; onload=&#39;y</p>',
  );
});

test('markup stands as it is, lists one after another, nothing for null and false', () => {
  const item = (text: string) => html`<li>${text}</li>`;
  expect(html`<ul>${['a', 'b & c'].map(item)}${null}${false}${rawMarkup('<li>3</li>')}${4}</ul>`.markup).toBe(
    '<ul><li>a</li><li>b &amp; c</li><li>3</li>4</ul>',
  );
});

test('whatever the text, a reader of the page gets it back and nothing else', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme-ascii' }), (text) => {
      const { document } = parseHTML(html`<html><body><p data-name="${text}">${text}</p></body></html>`.markup);
      const paragraph = document.querySelector('p')!;
      expect(document.body.children.length).toBe(1);
      expect(paragraph.textContent).toBe(text);
      expect(paragraph.getAttribute('data-name')).toBe(text);
    }),
  );
});
