const mostRemembered = 10_000;

/** A reader that remembers what it made of a text, for columns in which few texts recur on many rows. */
export function remembered<Reading>(read: (text: string) => Reading): (text: string) => Reading {
  const readings = new Map<string, Reading>();
  return (text) => {
    let reading = readings.get(text);
    if (reading === undefined) {
      reading = read(text);
      if (readings.size < mostRemembered) readings.set(text, reading);
    }
    return reading;
  };
}
