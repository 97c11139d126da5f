module.exports = class Page {
  render({ content, page }) {
    const up = this.upFrom(page.url);
    const title = /<h1[^>]*>(.*?)<\/h1>/.exec(content)?.[1] ?? 'Wintergap';
    return `<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${title}</title><style>${this.style()}</style></head>
<body><nav><a href="${up}index.html">Wintergap</a></nav><main>${content}</main></body>
</html>
`;
  }
};
