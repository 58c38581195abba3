// The one script of our own. It runs before the toolkit's, asks nothing of any server, and does what only the browser
// can: it forgets the customer before, prints, shares, and says that the server is gone.
"use strict";

// The next customer. Every entry of this tab's history carries the number of the customer it belongs to. Stepping back to
// one of an earlier customer, or loading it again, leads to the same page with nothing of theirs in the address.

let counted = 0; // where the browser keeps nothing, as long as the page lives

function customer(next) {
  try {
    if (next) sessionStorage.setItem("customer", customer() + 1);
    return Number(sessionStorage.getItem("customer") ?? 0);
  } catch {
    return (counted += next ? 1 : 0);
  }
}

// What is set for the place and not for a drive goes from the address into a cookie, and off the address, so that no
// customer's link carries it: what a showroom sets for itself, and what the columns of recordings mean.

const OF_THE_PLACE = ["showroom", "columns"];

function taken(url) {
  const to = new URL(url ?? location.href, location.href);
  const here = OF_THE_PLACE.filter((name) => to.searchParams.has(name));
  if (!here.length) return url;
  for (const name of here) {
    const given = to.searchParams.get(name);
    const age = given ? 365 * 24 * 3600 : 0;
    document.cookie = `${name}=${encodeURIComponent(given)}; path=/; SameSite=Strict; max-age=${age}`;
    to.searchParams.delete(name);
  }
  return to.href;
}

// An address that the server only completes, with the drive or with a recording that was opened, is no step of its own:
// a step back from it would have it completed again, and lead nowhere.

function completes(url) {
  const to = new URL(url ?? location.href, location.href);
  const now = new URLSearchParams(location.search);
  if (to.pathname !== location.pathname) return false;
  if (!now.has("v")) return true; // the server has not written this one yet
  for (const each of [now, to.searchParams]) {
    each.delete("recorded");
    each.sort();
  }
  return now.toString() === to.searchParams.toString();
}

const { pushState, replaceState } = History.prototype;

function go(way, [state, title, url]) {
  way.call(history, { ...state, customer: customer() }, title, taken(url));
}

history.pushState = (...step) => go(completes(step[2]) ? replaceState : pushState, step);
history.replaceState = (...step) => go(replaceState, step);

function isLeft() {
  return (history.state?.customer ?? customer()) < customer();
}

function forget() {
  if (isLeft()) history.replaceState(null, "", location.pathname);
}

forget();
history.replaceState(history.state, "", location.href); // with the customer's number, and without the showroom's settings
addEventListener("popstate", forget, true);
addEventListener("pageshow", (event) => {
  if (event.persisted && isLeft()) location.replace(location.pathname);
});

// A window as narrow as a telephone's gets its pages folded; the server is told before it draws the first. It reads
// cookies when it is connected: where a window becomes wide or narrow later, the toolkit is made to connect again. A
// telephone turned on its side keeps its page as it is, and the reader the place on it.

const NARROW = matchMedia("(max-width: 640px)"); // not the window's own width, which a pinch changes
let connected, told;

window.WebSocket = class extends WebSocket {
  constructor(...given) {
    super(...given);
    connected = this;
  }
};

function tellWidth() {
  if (told === NARROW.matches) return;
  told = NARROW.matches;
  document.cookie = `narrow=${told ? "yes" : "no"}; path=/; SameSite=Strict`;
  connected?.close();
}

tellWidth();
// where the sheet of a print is narrow, nothing was resized
addEventListener("resize", () => matchMedia("(pointer: fine)").matches && tellWidth());

// Clearing, printing and sharing.

addEventListener(
  "click",
  (event) => {
    if (!(event.target instanceof Element)) return;
    if (event.target.closest(".st-key-start-over button")) customer("next");
    if (event.target.closest(".st-key-print button, .st-key-take-print button")) {
      event.stopImmediatePropagation();
      layOut();
      print();
    }
    if (event.target.closest(".st-key-take-share button")) {
      event.stopImmediatePropagation();
      const url = document.querySelector(".st-key-sheets .open-again").href;
      // whoever closes the list of where to send it has changed their mind
      navigator.share({ title: document.title, url }).catch(() => {});
    }
  },
  true,
);

// The card to take is printed in place of the page, however printing was asked for: out of all that it stands in, where a
// browser would not turn to a new sheet.
function layOut() {
  document.getElementById("paper")?.remove();
  const sides = document.querySelector(".st-key-sheets .paper");
  if (!sides) return;
  const paper = document.createElement("div");
  paper.id = "paper";
  paper.append(sides.cloneNode(true));
  document.body.append(paper);
}

addEventListener("beforeprint", layOut);

document.documentElement.classList.toggle("shares", Boolean(navigator.share));

// A number brings up a keyboard of figures, unless it may be below zero: some such keyboards have no minus.
addEventListener(
  "pointerdown",
  (event) => {
    const entry = event.target instanceof Element && event.target.closest('[class*="st-key-entry-set-"] input');
    if (entry) entry.inputMode = "decimal";
  },
  true,
);

// Pictures are drawn for a light ground or a dark one: anew, once the toolkit knows that the system has changed.
matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => {
  setTimeout(() => document.querySelector(".st-key-redraw button")?.click(), 200);
});

// A finger often taps twice. What a tap has opened is not closed by the next at the same place, and nothing that has come
// there meanwhile is taken for it.

const OPENS = '[class*="st-key-door-"] button, [class*="st-key-row-"] button, [data-testid="stPopoverButton"], summary';
const TWICE_MS = 400;
const TWICE_PX = 30;
let tapped = { timeStamp: -Infinity };

addEventListener(
  "click",
  (event) => {
    if (!event.detail || !(event.target instanceof Element)) return; // pressed with a key
    const far = Math.hypot(event.clientX - tapped.clientX, event.clientY - tapped.clientY);
    if (event.timeStamp - tapped.timeStamp < TWICE_MS && far < TWICE_PX) {
      event.preventDefault();
      event.stopImmediatePropagation();
    } else if (event.target.closest(OPENS)) {
      tapped = event;
    }
  },
  true,
);

// The menu folds up once a page has been chosen in it, behind which that page would stand.

addEventListener(
  "click",
  (event) => {
    if (!(event.target instanceof Element && event.target.closest('[data-testid="stSidebarNavLink"]'))) return;
    // after the toolkit has gone to the page
    setTimeout(() => document.querySelector('[data-testid="stSidebarCollapseButton"] button')?.click());
  },
  true,
);

// What is opened on a telephone below its first screen is brought into sight, once.

const OPENED = ".st-key-sheet, .st-key-quick:not(.st-key-card *), .st-key-own-road-found";
let opened = false;

function bring() {
  const part = document.querySelector(OPENED);
  if (part && !opened && NARROW.matches) part.scrollIntoView({ block: "start" });
  opened = part !== null;
}

// On a telephone the answer in one line stays in sight, once the answer itself has been scrolled out of it.

const ANSWERS = ".st-key-answer h2, .st-key-lift-answer h2, .st-key-panel h2, .st-key-claim-answer h2";

function follow() {
  const answer = document.querySelector(ANSWERS);
  const gone = answer !== null && answer.getBoundingClientRect().bottom < 80;
  document.documentElement.classList.toggle("went-by", gone);
}

addEventListener("scroll", follow, { capture: true, passive: true });

// A part that is folded opens where the address names it: the toolkit's own ways to a heading end before one that is not
// there yet.

let wanted = location.hash.slice(1);
addEventListener("hashchange", () => {
  wanted = location.hash.slice(1);
  reach();
});

function reach() {
  const fold = wanted && document.querySelector(`.st-key-fold-${CSS.escape(wanted)}`);
  if (!fold) return;
  wanted = "";
  if (!fold.querySelector("details").open) fold.querySelector("summary").click();
  fold.scrollIntoView();
}

// The server is gone: what the toolkit says then is meant for whoever started it.

const PATIENCE_MS = 2500;
const GONE =
  "The server cannot be reached. What you entered is kept in the address of this page, which goes on by itself as " +
  "soon as the server is back.";
let timer = 0;

function watch() {
  const state = document.querySelector('[data-testid="stApp"]')?.dataset.testConnectionState;
  const isGone = state !== undefined && state !== "CONNECTED";
  if (!isGone) {
    clearTimeout(timer);
    timer = 0;
    document.getElementById("gone")?.remove();
  } else if (!timer) {
    timer = setTimeout(say, PATIENCE_MS);
  } else {
    document.querySelector('[data-testid="stDialog"] [aria-label="Close"]')?.click();
  }
}

function say() {
  const told = document.createElement("p");
  told.id = "gone";
  told.role = "alert";
  told.textContent = GONE;
  document.body.append(told);
}

// What is looked at whenever the toolkit has drawn something.

function look() {
  reach();
  bring();
  // the folded navigation: the toolkit calls it a sidebar, and shows two arrows
  document.querySelector('[data-testid="stExpandSidebarButton"]')?.setAttribute("aria-label", "Menu");
  watch();
}

addEventListener("DOMContentLoaded", () => {
  const observer = new MutationObserver(look);
  observer.observe(document.getElementById("root"), {
    subtree: true,
    attributeFilter: ["data-test-connection-state", "data-test-script-state"],
  });
  observer.observe(document.body, { childList: true });
});
