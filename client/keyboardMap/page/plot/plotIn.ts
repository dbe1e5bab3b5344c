import { Plot } from './plot';

/** The plot of a chart, in the elements that the chart has rendered; it is drawn anew where its room changes. */
export function plotIn(chart: HTMLElement, redrawn: () => void): Plot {
  const part = <Part extends HTMLElement>(selector: string) => chart.querySelector(selector) as Part;
  const scroller = part('.scroller');
  const plot = new Plot({
    scroller,
    map: part('.map'),
    plot: part('.picture'),
    marks: part('.picture.marks'),
    axis: part('.axis'),
  });
  const fitSoon = () =>
    requestAnimationFrame(() => {
      if (!scroller.isConnected) return;
      plot.fit();
      redrawn();
    });
  new ResizeObserver(fitSoon).observe(scroller);
  // The height of the window counts, of which no element in it need tell.
  const resized = () => {
    if (scroller.isConnected) fitSoon();
    else window.removeEventListener('resize', resized);
  };
  window.addEventListener('resize', resized);
  return plot;
}
