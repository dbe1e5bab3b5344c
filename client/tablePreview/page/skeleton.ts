/** The elements of the page that stay; what they hold is drawn by the view. */
export const skeleton = `
<p data-part="empty" class="empty" role="status">Waiting for a table.</p>
<div data-part="sheet" hidden>
  <header>
    <h1 data-part="title"></h1>
    <p data-part="summary" role="status" aria-live="polite"></p>
    <p data-part="problem" class="problem" role="alert" hidden></p>
  </header>
  <div class="sides">
    <div class="side">
      <section aria-labelledby="columns-title">
        <h2 id="columns-title">Columns as understood</h2>
        <div class="scroller"><table data-part="columns" class="columns"></table></div>
      </section>
      <section data-part="choices" class="choices" aria-label="Choices"></section>
    </div>
    <section class="side" aria-labelledby="markup-title">
      <h2 id="markup-title">What is written</h2>
      <pre data-part="markup" class="markup" id="markup" tabindex="0" aria-labelledby="markup-title"></pre>
    </section>
  </div>
  <section aria-labelledby="rows-title">
    <h2 id="rows-title">Rows and notes</h2>
    <ul data-part="notes" class="other-notes"></ul>
    <div data-part="scroller" class="scroller rows-scroller" id="rows" tabindex="0" role="region" aria-labelledby="rows-title"><table data-part="rows" class="rows"></table></div>
  </section>
  <footer>
    <button type="button" id="write" data-action="write" class="main"></button>
    <button type="button" id="write-text" data-action="writeText">Write as text</button>
    <button type="button" id="forget" data-action="forget" hidden>Forget corrections for these headings</button>
    <span class="quiet">Control or Command with Enter writes.</span>
  </footer>
</div>
`;
