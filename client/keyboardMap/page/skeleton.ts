/** The elements of the page that stay; what they hold is drawn by the view. */
export const skeleton = `
<section data-part="empty" class="empty">
  <p data-part="empty-reason" class="reason" role="status">Waiting for a document.</p>
  <p class="quiet">The keyboard map shows which keys and velocities play which sample: write a region with a sample and a key range in an instrument document, and it appears here.</p>
</section>
<div data-part="chart" hidden>
  <header class="bar">
    <h1 data-part="document"></h1>
    <p data-part="summary" class="summary" role="status" aria-live="polite"></p>
    <div class="zoom" role="group" aria-label="Zoom">
      <button type="button" data-zoom="out" aria-label="Zoom out" title="Zoom out (−)">−</button>
      <output data-part="zoom-level" aria-label="Zoom level"></output>
      <button type="button" data-zoom="in" aria-label="Zoom in" title="Zoom in (+)">+</button>
    </div>
  </header>
  <div class="body">
  <div class="plot-row">
    <div data-part="axis" class="axis-column"></div>
    <div data-part="scroller" class="scroller" tabindex="-1">
      <div data-part="map" class="map" role="listbox" tabindex="0" aria-multiselectable="true" aria-label="Regions by key and velocity" aria-describedby="keyboard-map-help"></div>
    </div>
  </div>
  <div class="side">
  <section data-part="details" class="details" aria-label="Details">
    <p data-part="details-text" class="details-text" aria-live="polite"></p>
    <div data-part="details-body"></div>
  </section>
  <fieldset data-part="layers" class="layers"></fieldset>
  <ul data-part="signs" class="signs" aria-label="Signs"></ul>
  <div data-part="places"></div>
  <p id="keyboard-map-help" class="help quiet">Arrow keys move to the nearest shape, Page Up and Page Down step through all of them. Enter shows a region in the text, Escape goes back. Plus and minus zoom.</p>
  </div>
  </div>
</div>
`;
