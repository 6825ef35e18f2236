import { render } from 'preact';
import { App } from './App.tsx';
import { startAlarms } from './alarmState.ts';
import { startClock } from './clock.ts';
import { startLive } from './live.ts';
import { startRouter } from './router.ts';
import { startSound } from './sound.ts';
import { startQueue } from './startQueue.ts';

const page = document.getElementById('page');
if (!page) throw new Error('Expected an element with id page in index.html, got none');
startRouter();
startClock();
startQueue();
startLive();
startAlarms();
startSound();
render(<App />, page);

if (import.meta.env.PROD && 'serviceWorker' in navigator) {
  navigator.serviceWorker.register('/shell.js').catch(() => {
    // Without it the page still works; it only cannot open while the hub is away.
  });
}
