// Runs before anything is drawn: the look chosen on this phone, so that a dark set never sees a light screen first.
try {
  const look = localStorage.getItem('rollbook-look');
  if (look && look !== 'system') document.documentElement.dataset.look = look;
} catch {
  // A browser that keeps nothing shows the system's look.
}
