Console.WriteLine("desk");
