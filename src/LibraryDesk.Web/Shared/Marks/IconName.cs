namespace LibraryDesk.Web.Shared.Marks;

/// <summary>The icons of the desk, named for what they show. See <c>Icon.razor</c>.</summary>
public enum IconName
{
    Back, Bell, Book, Box, Camera, Clock, Cross, Cut, Down, Eye, Fork, Forward, HalfDisc, Hand, Info, Leaf, Letter, Lighter, Lock, Menu, Moon,
    Offline, Person, Plus, Print, Ring, Ruler, Scan, Search, Sun, TakeBack, Tag, Tick, Warning, Zoom,
}
