// First of all: what follows asks for the language as it is loaded. All of it is one file, in this order.
import './host/language.ts';
import './page.ts';
