// Loads the page anew when the preview has made the book again, and says on the
// page when the preview has ended.
"use strict";
const shown = document.currentScript.dataset.version;
const changes = new EventSource("/.preview/changes");
changes.onmessage = (event) => {
  if (event.data !== shown) {
    changes.close();
    location.reload();
  }
};
