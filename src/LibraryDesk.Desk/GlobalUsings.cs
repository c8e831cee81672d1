// The desk's acts answer with the lineage core's Outcome and Refusal; there is one pair of these types in the project.
global using LibraryDesk.Data;
global using LibraryDesk.Desk.People;
global using LibraryDesk.Desk.Settings;
global using LibraryDesk.Lineage;
global using Microsoft.EntityFrameworkCore;
