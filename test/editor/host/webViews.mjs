const pollMilliseconds = 100;

/**
 * Gives the frame that a request is about: the workbench itself, or, where `view` is a CSS selector, the page
 * inside the web view that holds an element matching it. Waits for such a view; throws when none comes in time.
 */
export async function frameFor(page, view, timeoutSeconds) {
  if (view === undefined) return page.mainFrame();
  const deadline = Date.now() + timeoutSeconds * 1000;
  while (true) {
    const frames = webViewFrames(page);
    for (const frame of frames) {
      if (await holds(frame, view)) return frame;
    }
    if (Date.now() > deadline) {
      throw new Error(
        `No web view holds an element “${view}” after ${timeoutSeconds} s (${frames.length} web views open).`,
      );
    }
    await new Promise((resolve) => setTimeout(resolve, pollMilliseconds));
  }
}

/** The frames that carry the documents of extensions' web views: the editor nests one in each outer frame. */
function webViewFrames(page) {
  return page.frames().filter((frame) => ['active-frame', 'pending-frame'].includes(frame.name()));
}

async function holds(frame, selector) {
  try {
    return (await frame.locator(selector).count()) > 0;
  } catch {
    // The frame went away meanwhile.
    return false;
  }
}
