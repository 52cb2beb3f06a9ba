import { mount } from "svelte";
import "../css/tokens.css";
import "../css/look.css";
import "../css/studio.css";
import App from "./App.svelte";

const target = document.getElementById("app");
if (target) mount(App, { target });
