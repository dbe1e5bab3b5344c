/** What a function gives for an object, worked out once for each: pages are rendered again at each movement of the pointer. */
export function onceFor<Subject extends object, Result>(
  work: (subject: Subject) => Result,
): (subject: Subject) => Result {
  const known = new WeakMap<Subject, { result: Result }>();
  return (subject) => {
    let found = known.get(subject);
    if (!found) {
      found = { result: work(subject) };
      known.set(subject, found);
    }
    return found.result;
  };
}
