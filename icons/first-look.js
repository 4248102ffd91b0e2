// Runs before anything is drawn: the look chosen on this phone, so that a dark set never sees a light screen first,
// and the hand that holds it, so that nothing changes sides.
try {
  const look = localStorage.getItem('rollbook-look');
  if (look && look !== 'system') document.documentElement.dataset.look = look;
  // What the browser paints around the page is as dark as the page; of several, the first that fits is taken.
  if (look === 'dim' || look === 'dark') {
    const around = document.createElement('meta');
    around.name = 'theme-color';
    around.content = '#000';
    document.head.prepend(around);
  }
  const hand = localStorage.getItem('rollbook-hand');
  if (hand === 'left') document.documentElement.dataset.hand = hand;
} catch {
  // A browser that keeps nothing shows the system's look.
}

// What the first screen shows is asked for while the app is still on its way, so that both are there at once. It is the
// app that makes a database: where there is none, or none of this shape, something else comes out, and never an error.
// Taken by `src/storage/first-read.ts`.
window.firstRead = new Promise((done) => {
  const day = /^#\/day\/([\w.:-]+)/.exec(location.hash)?.[1] ?? '';
  const opening = indexedDB.open('rollbook');
  opening.onupgradeneeded = () => opening.transaction.abort();
  opening.onerror = done;
  opening.onsuccess = () => {
    const db = opening.result;
    try {
      const tx = db.transaction(['facts', 'days', 'meta']);
      const meta = tx.objectStore('meta');
      const database = meta.get('database');
      const filling = meta.get('filling');
      const days = tx.objectStore('days').getAll();
      const facts = tx.objectStore('facts').getAll(IDBKeyRange.bound([day], [day, []]));
      tx.onabort = done;
      tx.oncomplete = () =>
        done({
          version: db.version,
          day,
          database: database.result,
          filling: filling.result,
          days: days.result,
          facts: facts.result,
        });
    } catch (error) {
      done(error);
    }
    // What was asked for before is still answered.
    db.close();
  };
}).catch(() => {});
