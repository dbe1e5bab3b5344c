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
  const fit = () =>
    requestAnimationFrame(() => {
      if (!scroller.isConnected) return;
      plot.fit();
      redrawn();
    });
  new ResizeObserver(fit).observe(scroller);
  // The height of the window counts, which the plot's own room does not tell.
  new ResizeObserver(fit).observe(document.documentElement);
  return plot;
}
