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
